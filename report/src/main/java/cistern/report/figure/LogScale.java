package cistern.report.figure;

import java.util.ArrayList;
import java.util.List;

/**
 * Equal steps for equal ratios.
 *
 * @param from the first value, positive
 * @param to the last value
 * @param start the place of the first value
 * @param end the place of the last value
 */
public record LogScale(double from, double to, double start, double end) implements Scale {

  /** The leading digits that get a tick in every decade. */
  private static final double[] DIGITS = {1, 2, 5};

  /** A tick on the end of a scale stays on it although its last bit may differ. */
  private static final double SLACK = 1e-9;

  /** Checks the range. */
  public LogScale {
    if (!(from > 0 && from < to)) {
      throw new IllegalArgumentException("a logarithmic scale is positive and rises");
    }
  }

  @Override
  public double at(double value) {
    double share = Math.log(Math.clamp(value, from, to) / from) / Math.log(to / from);
    return start + share * (end - start);
  }

  /** The length of a ratio, {@code ln} of it given, in user units and without sign. */
  double length(double logarithm) {
    return Math.abs(logarithm / Math.log(to / from) * (end - start));
  }

  /** The value at a share of the way, 0 to 1. */
  double value(double share) {
    return from * Math.pow(to / from, share);
  }

  /** 1, 2 and 5 of every decade on the scale. */
  public List<Double> ticks() {
    List<Double> ticks = new ArrayList<>();
    int last = (int) Math.ceil(Math.log10(to));
    for (int decade = (int) Math.floor(Math.log10(from)); decade <= last; decade++) {
      for (double digit : DIGITS) {
        double tick = digit * Math.pow(10, decade);
        if (tick >= from * (1 - SLACK) && tick <= to * (1 + SLACK)) {
          ticks.add(tick);
        }
      }
    }
    return ticks;
  }
}
