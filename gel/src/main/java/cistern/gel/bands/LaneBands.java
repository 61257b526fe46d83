package cistern.gel.bands;

import cistern.gel.lanes.LanePlace;
import java.util.List;

/** A lane with what was found in it; its bands run from top to bottom. */
public final class LaneBands {
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

  LaneBands withBands(List<Band> others) {
    return new LaneBands(trace, bend, condition, others);
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
