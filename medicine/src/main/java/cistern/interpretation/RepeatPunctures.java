package cistern.interpretation;

import cistern.analysis.Puncture;
import cistern.fact.Facts;
import cistern.followup.Comparison;
import cistern.followup.Comparisons;
import java.util.List;
import java.util.Optional;

/** Composes the comparison of repeat punctures from their interpretations. */
public final class RepeatPunctures {

  private final Comparisons comparisons;

  private RepeatPunctures(Facts facts) {
    comparisons = Comparisons.of(facts);
  }

  /** Comparisons under some facts. */
  public static RepeatPunctures of(Facts facts) {
    return new RepeatPunctures(facts);
  }

  /** Why some punctures may not be compared, if they may not. */
  public Optional<String> refusal(List<Interpretation> punctures) {
    return Comparisons.refusal(shown(punctures));
  }

  /** The comparison of at least two punctures. */
  public Comparison compare(List<Interpretation> punctures) {
    return comparisons.compare(shown(punctures));
  }

  private static List<Puncture> shown(List<Interpretation> punctures) {
    return punctures.stream().map(Interpretation::puncture).toList();
  }
}
