package cistern.differential;

import cistern.fact.Facts;
import java.util.List;
import java.util.Optional;

/** Gives the probability of a further event where a calibrated context has cohorts for it. */
public final class Probabilities {

  private static final String CALIBRATED = "yes";

  private final Facts facts;

  private Probabilities(Facts facts) {
    this.facts = facts;
  }

  /** Probabilities under some facts. */
  public static Probabilities of(Facts facts) {
    return new Probabilities(facts);
  }

  /**
   * The number for a person within the domain.
   *
   * @param unknown what was not measured or stated and is named beside the number
   */
  public Probability given(
      CohortContext context, Prior prior, Observation marker, List<String> unknown) {
    String key = "probability." + context.code() + ".";
    if (!facts.word(key + "calibrated").equals(CALIBRATED)) {
      return Probability.none(
          Probability.Status.NOT_CALIBRATED,
          Optional.of(context),
          Optional.of(prior),
          "no number for %s has yet been met by cohorts that were held out"
              .formatted(context.term()));
    }
    CohortModel model = CohortModel.of(context, facts);
    boolean isFound = marker.isFound();
    return new Probability(
        Probability.Status.GIVEN,
        Optional.of(context),
        Optional.of(prior),
        Optional.of(
            new Probability.Given(
                marker.trait() == Trait.BANDS ? Marker.BANDS : Marker.KAPPA_INDEX,
                isFound,
                model.point(prior, isFound),
                model.interval95(prior, isFound),
                (int) facts.number(key + "cohorts"),
                (int) facts.number(key + "people"),
                CohortModel.own(facts).isPresent())),
        Optional.empty(),
        unknown);
  }
}
