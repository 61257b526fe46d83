package cistern.cohort;

import java.io.Serializable;

/**
 * How stated probabilities stand to what came true, in parts that may be merged.
 *
 * @param people how many probabilities were stated
 * @param happened in how many it came true
 * @param foretold the sum of the probabilities
 * @param squares the sum of (probability − outcome)²
 * @param surprise the sum of −ln of the probability of what came true
 */
public record Calibration(
    long people, long happened, double foretold, double squares, double surprise)
    implements Serializable {

  /** Nobody yet. */
  public static final Calibration NONE = new Calibration(0, 0, 0, 0, 0);

  /**
   * One person more.
   *
   * @param probability what was stated, between 0 and 1, neither of them
   * @param cameTrue whether it came true
   */
  public Calibration with(double probability, boolean cameTrue) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("a probability lies between 0 and 1");
    }
    double off = probability - (cameTrue ? 1 : 0);
    double of = cameTrue ? probability : 1 - probability;
    return merge(new Calibration(1, cameTrue ? 1 : 0, probability, off * off, -Math.log(of)));
  }

  /** The people of both. */
  public Calibration merge(Calibration other) {
    return new Calibration(
        people + other.people,
        happened + other.happened,
        foretold + other.foretold,
        squares + other.squares,
        surprise + other.surprise);
  }

  /** The Brier score, 0 is best. */
  public double brier() {
    return squares / people;
  }

  /** The mean log score, 0 is best. */
  public double logScore() {
    return surprise / people;
  }
}
