package cistern.differential;

import cistern.fact.Facts;
import java.util.Optional;
import java.util.OptionalDouble;

/** What published counts say for and against diseases, and how the one number moves. */
public final class Differential {

  private static final String NOT_COUNTED = "not counted: no cohort shows that it adds to bands";
  private static final String NO_NUMBER = "not counted: no probability is given";

  private final Arguments arguments;

  private Differential(Facts facts) {
    arguments = new Arguments(Series.all(facts));
  }

  /** The counts under some facts. */
  public static Differential of(Facts facts) {
    return new Differential(facts);
  }

  /** What the observations say beside a probability. */
  public DifferentialResult interpret(
      Observations observations, Optional<Prior> prior, Probability probability) {
    return new DifferentialResult(
        prior,
        probability,
        arguments.of(observations),
        observations.heard().stream().map(o -> weight(o, probability)).toList(),
        Assumptions.of(probability));
  }

  private static Weight weight(Observation observation, Probability probability) {
    boolean isCounted =
        probability
            .given()
            .filter(g -> g.marker().finding().equals(observation.trait().finding()))
            .isPresent();
    return isCounted
        ? new Weight(
            observation,
            OptionalDouble.of(probability.logOdds().orElseThrow()),
            probability.logOdds95(),
            Optional.empty())
        : new Weight(
            observation,
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.of(probability.given().isPresent() ? NOT_COUNTED : NO_NUMBER));
  }
}
