package cistern.puncture.decision;

import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.HoldVerdict;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the contraindications amount to: never that a puncture is safe.
 *
 * @param go what to do
 * @param because the codes of what is present or open, heaviest first
 * @param earliest when every printed interval has passed, where only hours are waited for
 */
public record PunctureVerdict(
    Contraindication.Go go, List<String> because, Optional<OffsetDateTime> earliest) {

  /** Copies the codes. */
  public PunctureVerdict {
    because = List.copyOf(because);
  }

  /** The verdict of contraindications in the order of their weight. */
  public static PunctureVerdict of(
      List<Contraindication> all, List<AntithromboticPlan> drugs, boolean isEveryDrugKnown) {
    Contraindication.Go go =
        all.stream()
            .map(Contraindication::asks)
            .reduce(Contraindication.Go.GO, Contraindication.Go::and);
    List<String> because =
        all.stream()
            .filter(c -> c.asks() != Contraindication.Go.GO)
            .sorted(Comparator.comparing(Contraindication::asks))
            .map(Contraindication::code)
            .toList();
    boolean isHours = isEveryDrugKnown && go != Contraindication.Go.DO_NOT;
    return new PunctureVerdict(go, because, isHours ? earliest(drugs) : Optional.empty());
  }

  private static Optional<OffsetDateTime> earliest(List<AntithromboticPlan> drugs) {
    List<AntithromboticPlan> waiting =
        drugs.stream().filter(d -> d.together() != HoldVerdict.PASSED).toList();
    return waiting.stream().allMatch(d -> d.passedAt().isPresent())
        ? waiting.stream().flatMap(d -> d.passedAt().stream()).max(Comparator.naturalOrder())
        : Optional.empty();
  }
}
