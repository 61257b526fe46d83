package cistern.gel.bands;

import cistern.gel.lanes.LanePlace;
import java.util.Arrays;
import java.util.List;

/** A lane with what was found in it; its bands run from top to bottom. */
public final class LaneBands {
  private static final double LOW = 0.3;

  private final LaneTrace trace;
  private final Bend bend;
  private final LaneCondition condition;
  private final List<Band> bands;

  LaneBands(LaneTrace trace, Bend bend, LaneCondition condition, List<Band> bands) {
    this.trace = trace;
    this.bend = bend;
    this.condition = condition;
    this.bands = List.copyOf(bands);
  }

  /** Where the lane lies. */
  public LanePlace place() {
    return trace.place();
  }

  /** From top to bottom. */
  public List<Band> bands() {
    return bands;
  }

  /** How many rows the lane has. */
  public int rows() {
    return trace.rows();
  }

  LaneTrace trace() {
    return trace;
  }

  /** The fitness of the lane to be read. */
  public LaneCondition condition() {
    return condition;
  }

  /** By how many rows bands depart from a straight line across the lane. */
  public double sag() {
    return bend.sag(trace.place().width());
  }

  /**
   * By how many rows the lane's own bands, at its edge, lie off the course that the gel's other
   * lanes foretell, where this course was followed; else 0.
   */
  public double astray() {
    return bend.astray();
  }

  /** How many bands are rather there than not. */
  public int likely() {
    return (int) bands.stream().filter(b -> b.probability() > 0.5).count();
  }

  LaneBands withBands(List<Band> others) {
    return new LaneBands(trace, bend, condition, others);
  }

  /**
   * The broad course of the density along the lane, without its bands: a low quantile in each of so
   * many equal parts, OD.
   */
  public double[] background(int parts) {
    float[] profile = withoutBands();
    double[] course = new double[parts];
    for (int i = 0; i < parts; i++) {
      int from = (int) ((long) profile.length * i / parts);
      int to = (int) ((long) profile.length * (i + 1) / parts);
      float[] part = Arrays.copyOfRange(profile, from, to);
      Arrays.sort(part);
      course[i] = part[(int) (LOW * part.length)];
    }
    return course;
  }

  private float[] withoutBands() {
    float[] rest = trace.profile().clone();
    for (Band b : bands) {
      double middle = b.y() - trace.firstRow();
      int reach = (int) Math.ceil(4 * b.sigma());
      for (int y = Math.max(0, (int) middle - reach);
          y < Math.min(rest.length, middle + reach);
          y++) {
        double t = (y - middle) / b.sigma();
        rest[y] -= (float) (b.height() * Math.exp(-0.5 * t * t));
      }
    }
    return rest;
  }

  /** The filter's answer at a row of the picture, OD of a band; 0 outside. */
  public double answerAt(double row) {
    return at(trace.answer(), row);
  }

  /** The noise of the answer at a row of the picture, OD. */
  public double noiseAt(double row) {
    float[] n = trace.noise();
    return n[Math.clamp(Math.round(row - trace.firstRow()), 0, n.length - 1)];
  }

  private double at(float[] v, double row) {
    double q = row - trace.firstRow();
    int i = (int) Math.floor(q);
    if (i < 0 || i + 1 >= v.length) {
      return 0;
    }
    double f = q - i;
    return v[i] + f * (v[i + 1] - v[i]);
  }
}
