package cistern.gel.pairing;

import cistern.fact.Facts;
import cistern.gel.bands.Band;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Looks for the shift and stretch that lay the bands of two lanes on each other. Both have a prior:
 * the shift around what the gel's tilt foretells, the stretch around none.
 */
final class AlignmentSearch {
  /** How far is searched, in standard deviations. */
  private static final double REACH = 2.5;

  private static final int STRETCHES = 11;
  private final double shiftSpread;
  private final double stretchSpread;
  private final double bandSpread;
  private final Counterparts counterparts;
  private final int kept;

  /**
   * @param sigma of the gel's bands, rows
   * @param height of the picture, rows
   * @param looseness how far lanes of this gel stray, over what is usual
   */
  AlignmentSearch(Facts facts, double sigma, double height, double looseness) {
    this.shiftSpread = looseness * facts.number("gel.alignment.shift-spread") * height;
    this.stretchSpread = looseness * facts.number("gel.alignment.stretch-spread");
    this.bandSpread = facts.number("gel.alignment.band-spread") * sigma;
    this.counterparts = Counterparts.of(facts, bandSpread, height);
    this.kept = (int) facts.number("gel.alignment.kept");
  }

  /** The best alignments with their weights, best first. */
  List<Alignment> search(List<Band> csf, List<Band> serum, double foretold, double pivot) {
    Alignment[][] grid = grid(foretold, pivot);
    double[][] scores = scores(csf, serum, grid);
    List<Alignment> best = new ArrayList<>();
    for (int i = 0; i < grid.length; i++) {
      for (int j = 0; j < STRETCHES; j++) {
        if (isTop(scores, i, j)) {
          best.add(grid[i][j].withWeight(scores[i][j]));
        }
      }
    }
    best.sort(Comparator.comparingDouble(Alignment::weight).reversed());
    return weighted(best.subList(0, Math.min(kept, best.size())));
  }

  /**
   * How well the bands of two lanes agree, averaged over what is foretold: the log likelihood of
   * one person against two.
   */
  double evidence(List<Band> csf, List<Band> serum, double foretold, double pivot) {
    Alignment[][] grid = grid(foretold, pivot);
    double[][] scores = scores(csf, serum, grid);
    double seen = 0;
    double all = 0;
    for (int i = 0; i < grid.length; i++) {
      for (int j = 0; j < STRETCHES; j++) {
        seen += Math.exp(scores[i][j]);
        all += Math.exp(-grid[i][j].strain());
      }
    }
    return Math.log(seen / all);
  }

  private Alignment[][] grid(double foretold, double pivot) {
    int half = (int) Math.ceil(REACH * shiftSpread / (0.5 * bandSpread));
    int middle = STRETCHES / 2;
    Alignment[][] grid = new Alignment[2 * half + 1][STRETCHES];
    for (int i = 0; i < grid.length; i++) {
      double ds = REACH * (i - half) / half;
      for (int j = 0; j < STRETCHES; j++) {
        double dt = REACH * (j - middle) / middle;
        grid[i][j] =
            new Alignment(
                foretold + ds * shiftSpread,
                dt * stretchSpread,
                pivot,
                0,
                0.5 * (ds * ds + dt * dt));
      }
    }
    return grid;
  }

  private double[][] scores(List<Band> csf, List<Band> serum, Alignment[][] grid) {
    double[][] scores = new double[grid.length][STRETCHES];
    for (int i = 0; i < grid.length; i++) {
      for (int j = 0; j < STRETCHES; j++) {
        scores[i][j] = score(csf, serum, grid[i][j]);
      }
    }
    return scores;
  }

  private static boolean isTop(double[][] s, int i, int j) {
    for (int di = -1; di <= 1; di++) {
      for (int dj = -1; dj <= 1; dj++) {
        int a = i + di;
        int b = j + dj;
        if (a >= 0
            && b >= 0
            && a < s.length
            && b < s[0].length
            && (s[a][b] > s[i][j] || (s[a][b] == s[i][j] && (a < i || (a == i && b < j))))) {
          return false;
        }
      }
    }
    return true;
  }

  private static List<Alignment> weighted(List<Alignment> best) {
    double top = best.getFirst().weight();
    double sum = best.stream().mapToDouble(a -> Math.exp(a.weight() - top)).sum();
    return best.stream().map(a -> a.withWeight(Math.exp(a.weight() - top) / sum)).toList();
  }

  private double score(List<Band> csf, List<Band> serum, Alignment a) {
    return counterparts.logLikelihood(csf, serum, a) - a.strain();
  }
}
