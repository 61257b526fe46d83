package cistern.differential;

import cistern.fact.Facts;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Gives the probability of a further event where a calibrated context has cohorts for it. */
public final class Probabilities {

  private static final String CALIBRATED = "yes";

  /**
   * More different questions than this are not kept: a cohort asks the same few again and again.
   */
  private static final int KEPT = 4_096;

  private final Facts facts;
  private final Map<Asked, Probability.Given> answers = new ConcurrentHashMap<>();

  /** Everything that a number depends on beside the facts. */
  private record Asked(CohortContext context, Prior prior, Marker marker, boolean isFound) {}

  private Probabilities(Facts facts) {
    this.facts = facts;
  }

  /** Probabilities under some facts. */
  public static Probabilities of(Facts facts) {
    return new Probabilities(facts);
  }

  /** The facts in force. */
  public Facts facts() {
    return facts;
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
    Marker found = marker.trait() == Trait.BANDS ? Marker.BANDS : Marker.KAPPA_INDEX;
    Asked asked = new Asked(context, prior, found, marker.isFound());
    if (answers.size() > KEPT) {
      answers.clear();
    }
    return new Probability(
        Probability.Status.GIVEN,
        Optional.of(context),
        Optional.of(prior),
        Optional.of(answers.computeIfAbsent(asked, this::computed)),
        Optional.empty(),
        unknown);
  }

  private Probability.Given computed(Asked asked) {
    String key = "probability." + asked.context().code() + ".";
    CohortModel model = CohortModel.of(asked.context(), facts);
    return new Probability.Given(
        asked.marker(),
        asked.isFound(),
        model.point(asked.prior(), asked.isFound()),
        model.interval95(asked.prior(), asked.isFound()),
        (int) facts.number(key + "cohorts"),
        (int) facts.number(key + "people"),
        CohortModel.own(facts).isPresent());
  }
}
