package cistern.differential;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * What else it could be, as far as published counts go.
 *
 * @param prior how likely MS was before, if stated
 * @param split how what is not MS is shared out
 * @param posteriors the diseases with a number; empty without a prior
 * @param arguments the diseases with too few counts for one
 * @param weights how much each finding moves each disease of the model
 * @param counts the published counts behind them
 * @param practice what the trade says beside it
 * @param assumptions everything that was assumed
 */
public record DifferentialResult(
    Optional<Prior> prior,
    SequencedMap<Disease, Double> split,
    List<Posterior> posteriors,
    List<Argument> arguments,
    List<Weight> weights,
    List<CountTable> counts,
    List<PracticeCompared> practice,
    List<String> assumptions) {

  /** Copies the collections. */
  public DifferentialResult {
    split = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(split));
    posteriors = List.copyOf(posteriors);
    arguments = List.copyOf(arguments);
    weights = List.copyOf(weights);
    counts = List.copyOf(counts);
    practice = List.copyOf(practice);
    assumptions = List.copyOf(assumptions);
  }

  /** How much each finding moves MS against the rest. */
  public List<Weight> weightsOfMs() {
    return weights.stream().filter(w -> w.disease() == Disease.MS).toList();
  }

  /** The posterior of a disease, if it has one. */
  public Optional<Posterior> posterior(Disease disease) {
    return posteriors.stream().filter(p -> p.disease() == disease).findFirst();
  }
}
