package cistern.differential;

import java.util.List;
import java.util.Optional;

/**
 * The probability of a second attack or new lesions after the fluid, or why there is none.
 *
 * @param status whether there is a number
 * @param context whom it speaks of, where that is known
 * @param prior the probability that was stated, if any
 * @param given the number; empty unless the status is given
 * @param reason why there is none, in words
 * @param unknown what was not measured or stated and would take the number away if it held
 */
public record Probability(
    Status status,
    Optional<CohortContext> context,
    Optional<Prior> prior,
    Optional<Given> given,
    Optional<String> reason,
    List<String> unknown) {

  /** Whether there is a number. */
  public enum Status {
    GIVEN("given"),
    /** No cohort followed people like this one. */
    OUTSIDE_DOMAIN("outside-domain"),
    /** A context whose predictions have not been met by cohorts that were held out. */
    NOT_CALIBRATED("not-calibrated");

    private final String word;

    Status(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * The number.
   *
   * @param marker what was found or not found
   * @param isFound whether it was found
   * @param point the central value, 0 to 1
   * @param interval95 the middle 95 % of what new cohorts would show
   * @param cohorts how many cohorts or adjusted estimates it rests on
   * @param people how many persons they followed
   * @param isOwnShare whether the share with bands is this site's own
   */
  public record Given(
      Marker marker,
      boolean isFound,
      double point,
      Proportion.Ends interval95,
      int cohorts,
      int people,
      boolean isOwnShare) {}

  /** Copies the list. */
  public Probability {
    unknown = List.copyOf(unknown);
  }

  /** No number, and why. */
  public static Probability none(
      Status status, Optional<CohortContext> context, Optional<Prior> prior, String reason) {
    return new Probability(
        status, context, prior, Optional.empty(), Optional.of(reason), List.of());
  }

  /**
   * How far the marker moves the odds of the stated middle, natural logarithm; none without one.
   */
  public Optional<Proportion.Ends> logOdds95() {
    return given.map(
        g -> new Proportion.Ends(shift(g.interval95().lower()), shift(g.interval95().upper())));
  }

  /** The same for the central value. */
  public Optional<Double> logOdds() {
    return given.map(g -> shift(g.point()));
  }

  private double shift(double after) {
    double before = prior.map(Prior::middle).orElse(after);
    return CohortModel.logit(after) - CohortModel.logit(before);
  }
}
