package cistern.differential;

import java.util.List;
import java.util.Optional;

/**
 * What else it could be, as far as published counts go, and what the cohorts say of MS.
 *
 * @param prior how likely MS was before, if stated
 * @param probability the number after the fluid, or why there is none
 * @param arguments what speaks for and against each disease
 * @param weights how much each finding moves MS, or why not
 * @param assumptions everything that a number assumes
 */
public record DifferentialResult(
    Optional<Prior> prior,
    Probability probability,
    List<Argument> arguments,
    List<Weight> weights,
    List<String> assumptions) {

  /** Copies the collections. */
  public DifferentialResult {
    arguments = List.copyOf(arguments);
    weights = List.copyOf(weights);
    assumptions = List.copyOf(assumptions);
  }
}
