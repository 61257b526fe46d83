package cistern.gel.bands;

import cistern.gel.net.PairMaps;
import cistern.gel.net.PairMaps.Row;
import java.util.List;

/**
 * How the serum lane of a pair lies against its CSF lane: moved along, and a little stretched.
 *
 * @param shift rows of the strip by which a band of the serum lies lower, at mid-height
 * @param stretch how much more a row farther down
 */
public record Alignment(int shift, double stretch) {

  /** Rows by which one lane may lie lower. */
  private static final int FARTHEST = 30;

  /** How much one lane may be longer, and the step in which that is tried. */
  private static final double MOST_STRETCH = 0.021;

  private static final double STEP = 0.007;

  /** Rows within which two bands are held against each other. */
  private static final double NEAR = 5;

  /** What two numbers differ by that are the same but for their rounding. */
  private static final double ROUNDING = 1e-9;

  /** What each row of shift costs: of two alignments that explain as much, the nearer. */
  private static final double COST = 0.004;

  /** What each whole of stretch costs. */
  private static final double STRETCH_COST = 6;

  /** Least chance of a band of the CSF that the lanes are laid beside each other by. */
  private static final double TOLD_BY = 0.3;

  /** Rows of shift from which the net, which compares row by row, may be misled. */
  private static final int ASIDE = 3;

  /** The alignment under which most bands of the CSF have a counterpart. */
  public static Alignment of(PairMaps maps) {
    List<Integer> csf = maps.peaks(Row.CSF, TOLD_BY);
    List<Integer> serum = maps.peaks(Row.SERUM, Band.SUSPECTED);
    double[] met = csf.stream().mapToDouble(c -> met(maps, c)).toArray();
    double[] real = serum.stream().mapToDouble(s -> maps.at(Row.SERUM, s)).toArray();
    Alignment best = new Alignment(0, 0);
    double most = best.worth(csf, met, serum, real);
    for (double stretch = -MOST_STRETCH; stretch <= MOST_STRETCH + ROUNDING; stretch += STEP) {
      for (int shift = -FARTHEST; shift <= FARTHEST; shift++) {
        Alignment a = new Alignment(shift, stretch);
        double worth = a.worth(csf, met, serum, real);
        if (worth > most + ROUNDING) {
          most = worth;
          best = a;
        }
      }
    }
    return best;
  }

  /** The chance of a band of the CSF that has a counterpart. */
  private static double met(PairMaps maps, int row) {
    return maps.at(Row.CSF, row) * (1 - maps.most(Row.CSF_ALONE, row));
  }

  private double worth(List<Integer> csf, double[] met, List<Integer> serum, double[] real) {
    double worth = -COST * Math.abs(shift) - STRETCH_COST * Math.abs(stretch);
    for (int i = 0; i < met.length; i++) {
      double near = 0;
      for (int j = 0; j < real.length; j++) {
        double d = Math.abs(distance(csf.get(i), serum.get(j))) / NEAR;
        near = d < 1 ? Math.max(near, (1 - d * d) * real[j]) : near;
      }
      worth += near * met[i];
    }
    return worth;
  }

  /** How far a row of the serum lies below where the counterpart of one of the CSF should. */
  public double distance(int csf, int serum) {
    return serum - csf - shift - stretch * (csf - PairMaps.ROWS / 2.0);
  }

  /** The row of the CSF lane at which the counterpart of a row of the serum should lie. */
  int csfRow(int serum) {
    double middle = PairMaps.ROWS / 2.0;
    return (int) Math.round((serum - shift - middle) / (1 + stretch) + middle);
  }

  /** Whether the lanes lie so far aside that the net may be misled. */
  public boolean isAside() {
    return Math.abs(shift) >= ASIDE || Math.abs(stretch) > ROUNDING;
  }

  /** The rows that the serum's strip should cover to lie beside the CSF's. */
  public Strip.Rows of(Strip.Rows csf) {
    double step = csf.step() * (1 + stretch);
    double first = csf.first() + csf.step() * (shift - stretch * PairMaps.ROWS / 2.0);
    return new Strip.Rows(first, first + PairMaps.ROWS * step);
  }
}
