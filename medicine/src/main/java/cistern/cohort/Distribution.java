package cistern.cohort;

import java.io.Serializable;

/**
 * How some values lie, in parts that merge.
 *
 * @param moments count, mean and standard deviation
 * @param spectrum where they lie
 */
public record Distribution(Moments moments, Spectrum spectrum) implements Serializable {

  /** No value yet. */
  public static final Distribution NONE = new Distribution(Moments.NONE, Spectrum.NONE);

  /** One value, finite. */
  public static Distribution of(double value) {
    return new Distribution(Moments.NONE.with(value), Spectrum.of(value));
  }

  /** The values of a column; NaN is none. */
  static Distribution of(double[] column) {
    return new Distribution(Moments.of(column), Spectrum.of(column));
  }

  /** The values of both. */
  public Distribution merge(Distribution other) {
    return new Distribution(moments.merge(other.moments), spectrum.merge(other.spectrum));
  }
}
