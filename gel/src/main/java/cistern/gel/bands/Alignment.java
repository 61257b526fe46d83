package cistern.gel.bands;

import cistern.gel.net.PairMaps;
import java.util.List;

/**
 * How the serum lane of a pair lies against its CSF lane: moved along, and a little stretched.
 *
 * @param shift rows of the strip by which a band of the serum lies lower, at mid-height
 * @param stretch how much more a row farther down
 */
public record Alignment(int shift, double stretch) {
  private static final int FARTHEST = 30;
  private static final double MOST_STRETCH = 0.021;
  private static final double STEP = 0.007;
  private static final double NEAR = 5;

  /** What each row of shift costs: of two alignments that explain as much, the nearer. */
  private static final double COST = 0.004;

  private static final double STRETCH_COST = 6;
  private static final double LIKELY = 0.3;

  /** The alignment under which most bands of the CSF have a counterpart. */
  static Alignment of(List<Band> csf, List<Band> serum) {
    Alignment best = new Alignment(0, 0);
    double most = best.worth(csf, serum);
    for (double stretch = -MOST_STRETCH; stretch <= MOST_STRETCH + 1e-9; stretch += STEP) {
      for (int shift = -FARTHEST; shift <= FARTHEST; shift++) {
        Alignment a = new Alignment(shift, stretch);
        double worth = a.worth(csf, serum);
        if (worth > most + 1e-9) {
          most = worth;
          best = a;
        }
      }
    }
    return best;
  }

  private double worth(List<Band> csf, List<Band> serum) {
    double worth = -COST * Math.abs(shift) - STRETCH_COST * Math.abs(stretch);
    for (Band c : csf) {
      double near = 0;
      for (Band s : c.probability() < LIKELY ? List.<Band>of() : serum) {
        double d = Math.abs(distance(c, s)) / NEAR;
        near = d < 1 ? Math.max(near, (1 - d * d) * s.probability()) : near;
      }
      worth += near * c.probability() * (1 - c.alone());
    }
    return worth;
  }

  /** How far a band of the serum lies below where the counterpart of one of the CSF should. */
  public double distance(Band csf, Band serum) {
    return serum.row() - csf.row() - shift - stretch * (csf.row() - PairMaps.ROWS / 2.0);
  }

  /** The row of the CSF lane at which the counterpart of a band of the serum should lie. */
  int csfRow(Band serum) {
    double middle = PairMaps.ROWS / 2.0;
    return (int) Math.round((serum.row() - shift - middle) / (1 + stretch) + middle);
  }
}
