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
  private final double shiftSpread;
  private final double stretchSpread;
  private final double bandSpread;
  private final double gain;
  private final int kept;

  AlignmentSearch(Facts facts, double sigma, double height) {
    this.shiftSpread = facts.number("gel.alignment.shift-spread") * height;
    this.stretchSpread = facts.number("gel.alignment.stretch-spread");
    this.bandSpread = facts.number("gel.alignment.band-spread") * sigma;
    this.gain = facts.number("gel.alignment.gain");
    this.kept = (int) facts.number("gel.alignment.kept");
  }

  /** The best alignments with their weights, best first. */
  List<Alignment> search(List<Band> csf, List<Band> serum, double foretold, double pivot) {
    int shifts = 2 * (int) Math.ceil(2.5 * shiftSpread / (0.5 * bandSpread)) + 1;
    int stretches = 11;
    double shiftStep = 5 * shiftSpread / (shifts - 1);
    double stretchStep = 5 * stretchSpread / (stretches - 1);
    double[][] scores = new double[shifts][stretches];
    for (int i = 0; i < shifts; i++) {
      for (int j = 0; j < stretches; j++) {
        scores[i][j] =
            score(
                csf,
                serum,
                at(
                    i,
                    j,
                    shifts,
                    stretches,
                    new double[] {shiftStep, stretchStep, foretold, pivot}));
      }
    }
    List<Alignment> best = new ArrayList<>();
    for (int i = 0; i < shifts; i++) {
      for (int j = 0; j < stretches; j++) {
        if (isTop(scores, i, j)) {
          best.add(
              at(i, j, shifts, stretches, new double[] {shiftStep, stretchStep, foretold, pivot})
                  .withWeight(scores[i][j]));
        }
      }
    }
    best.sort(Comparator.comparingDouble(Alignment::weight).reversed());
    return weighted(best.subList(0, Math.min(kept, best.size())));
  }

  private Alignment at(int i, int j, int shifts, int stretches, double[] grid) {
    double shift = grid[2] + (i - shifts / 2) * grid[0];
    double stretch = (j - stretches / 2) * grid[1];
    double ds = (shift - grid[2]) / shiftSpread;
    double dt = stretch / stretchSpread;
    return new Alignment(shift, stretch, grid[3], 0, 0.5 * (ds * ds + dt * dt));
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
    double score = -a.strain();
    for (Band s : serum) {
      double best = 0;
      for (Band c : csf) {
        double d = (a.toSerum(c.y()) - s.y()) / bandSpread;
        if (d * d < 16) {
          best = Math.max(best, c.probability() * Math.exp(-0.5 * d * d));
        }
      }
      score += Math.log1p(gain * s.probability() * best);
    }
    return score;
  }
}
