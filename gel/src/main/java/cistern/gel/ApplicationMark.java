package cistern.gel;

import cistern.gel.bands.Band;
import cistern.gel.bands.PairBands;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * A line across the gel on which most pairs show something in both lanes: where samples were put
 * on, or a front. People differ, so that so many bands hardly ever lie on one line by chance.
 *
 * @param row of the strip at column 0
 * @param slope rows of the strip per column
 * @param strength OD that it usually has
 * @param stain its OD over its height, OD times rows
 */
record ApplicationMark(double row, double slope, double strength, double stain) {
  private static final double NEAR = 7;
  private static final int FEWEST = 3;
  private static final double MOST = 0.6;
  private static final double SUSPECTED = 0.03;
  private static final double STEEPEST = 0.1;

  /** Most chance of bands that agree by accident. */
  private static final double CHANCE = 0.05;

  /** How much stronger than the mark a band is that lies on it and is kept. */
  private static final double STRONGER = 2.5;

  /** How much more stain than the mark has is where a band may lie on it. */
  private static final double HIDING = 1.5;

  /** Share of the mark's stain that is enough for a lane to show it. */
  private static final double SHOWN = 0.5;

  /** How many times as strong as the faintest one the strongest band of a mark is at most. */
  private static final double LIKEST = 2;

  /** The chance that another person's band is so alike. */
  private static final double ALIKE = 0.4;

  /** Rows from one look to the next. */
  private static final int STEP = 10;

  /** Rows over which bands of a lane lie. */
  private static final double SPAN = 1000;

  /** A pair whose lanes lie at some columns. */
  record Placed(double csfColumn, double serumColumn, PairBands bands) {
    /** The row of the CSF's strip beside which a band of either lane lies in the picture. */
    private double line(Band band) {
      return bands.csfTrace().strip().rows().rowOf(band.y());
    }

    /** The row of the serum's strip beside one of the CSF's. */
    private int serumRow(int row) {
      double y = bands.csfTrace().strip().rows().at(row);
      return (int) Math.round(bands.serumTrace().strip().rows().rowOf(y));
    }

    private long possible() {
      return Math.max(1, Math.min(suspected(bands.csf()), suspected(bands.serum())));
    }

    private static long suspected(List<Band> bands) {
      return bands.stream().filter(b -> b.probability() >= SUSPECTED).count();
    }
  }

  /** The mark on a gel, if there is one. */
  static Optional<ApplicationMark> of(List<Placed> pairs) {
    List<ApplicationMark> lines = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      for (int j = i + 1; j < pairs.size(); j++) {
        lines.addAll(lines(pairs.get(i), pairs.get(j)));
      }
    }
    Optional<ApplicationMark> best = Optional.empty();
    double least = CHANCE / Math.max(1, lines.size());
    for (ApplicationMark line : lines) {
      double chance = line.chance(pairs);
      if (chance < least) {
        least = chance;
        best = Optional.of(line);
      }
    }
    return best.map(line -> line.measured(pairs));
  }

  /** The lines through a band of one pair and a band of another. */
  private static List<ApplicationMark> lines(Placed a, Placed b) {
    List<ApplicationMark> lines = new ArrayList<>();
    double across = b.csfColumn - a.csfColumn;
    double step = a.bands.csfTrace().strip().rows().step();
    for (Band from : a.bands.csf()) {
      for (Band to : b.bands.csf()) {
        double slope = (b.line(to) - a.line(from)) / across;
        boolean isSuspected = from.probability() >= SUSPECTED && to.probability() >= SUSPECTED;
        if (isSuspected && Math.abs(slope) * step <= STEEPEST) {
          double strength = Math.min(from.strength(), to.strength());
          lines.add(new ApplicationMark(a.line(from) - slope * a.csfColumn, slope, strength, 0));
        }
      }
    }
    return lines;
  }

  /**
   * The chance that as many pairs lie on this line by accident. Two always do: those that it was
   * drawn through.
   */
  private double chance(List<Placed> pairs) {
    double[] on =
        pairs.stream()
            .filter(this::isOn)
            .mapToDouble(p -> Math.min(1, p.possible() * 2 * NEAR / SPAN))
            .sorted()
            .toArray();
    double[] others =
        pairs.stream().filter(p -> !isOn(p)).mapToDouble(this::shown).filter(c -> c < 1).toArray();
    double chance = alike(pairs);
    for (int i = 0; i < on.length - 2; i++) {
      chance *= on[i];
    }
    for (double other : others) {
      chance *= other;
    }
    int all = on.length + others.length;
    boolean isEnough = on.length >= 2 && all >= FEWEST && all >= MOST * pairs.size();
    return isEnough ? chance : 1;
  }

  /** The chance that bands of different people are as alike as those on this line. */
  private double alike(List<Placed> pairs) {
    double[] strengths = on(pairs).mapToDouble(Band::strength).sorted().toArray();
    int last = strengths.length - 1;
    boolean isAlike = last > 0 && strengths[last] <= LIKEST * strengths[0];
    return isAlike ? Math.pow(ALIKE, last) : 1;
  }

  /** The bands that lie on this line, of both lanes. */
  private Stream<Band> on(List<Placed> pairs) {
    return pairs.stream()
        .filter(this::isOn)
        .flatMap(
            p ->
                Stream.concat(
                    p.bands.csf().stream().filter(b -> isNear(p, b, p.csfColumn)),
                    p.bands.serum().stream().filter(b -> isNear(p, b, p.serumColumn))));
  }

  private boolean isOn(Placed pair) {
    return pair.bands.csf().stream().anyMatch(b -> isNear(pair, b, pair.csfColumn))
        && pair.bands.serum().stream().anyMatch(b -> isNear(pair, b, pair.serumColumn));
  }

  /** The chance that both lanes show as much stain by accident; 1 where they do not. */
  private double shown(Placed pair) {
    int line = (int) Math.round(row + slope * 0.5 * (pair.csfColumn + pair.serumColumn));
    if (!isShown(pair, line)) {
      return 1;
    }
    int shown = 0;
    int looked = 0;
    for (int y = STEP; y < SPAN; y += STEP) {
      looked++;
      shown += isShown(pair, y) ? 1 : 0;
    }
    return Math.max((double) shown / looked, 2 * NEAR / SPAN);
  }

  private boolean isShown(Placed pair, int at) {
    return Math.min(
            pair.bands.csfTrace().above(at), pair.bands.serumTrace().above(pair.serumRow(at)))
        >= SHOWN * strength;
  }

  private boolean isNear(Placed pair, Band band, double column) {
    return band.probability() >= SUSPECTED
        && Math.abs(pair.line(band) - row - slope * column) <= NEAR;
  }

  private ApplicationMark measured(List<Placed> pairs) {
    return new ApplicationMark(
        row, slope, usual(pairs, Band::strength), usual(pairs, ApplicationMark::stain));
  }

  private double usual(List<Placed> pairs, ToDoubleFunction<Band> what) {
    double[] each =
        pairs.stream()
            .flatMap(p -> p.bands.csf().stream().filter(b -> isNear(p, b, p.csfColumn)))
            .mapToDouble(what)
            .sorted()
            .toArray();
    return each[each.length / 2];
  }

  private static double stain(Band band) {
    return band.strength() * band.height();
  }

  /** The bands of a pair without what belongs to the mark. */
  PairBands leftOut(Placed pair) {
    return pair.bands.without(
        b -> holds(pair, b, pair.csfColumn), b -> holds(pair, b, pair.serumColumn));
  }

  /**
   * Whether a band of the CSF may lie on the mark: more stain is there than the mark usually has.
   */
  boolean isHiding(Placed pair) {
    return pair.bands.csf().stream()
        .anyMatch(b -> holds(pair, b, pair.csfColumn) && stain(b) > HIDING * stain);
  }

  private boolean holds(Placed pair, Band band, double column) {
    return Math.abs(pair.line(band) - row - slope * column) <= NEAR
        && band.strength() <= STRONGER * strength;
  }
}
