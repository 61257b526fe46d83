package cistern.urgent;

import cistern.bedside.MicrobeTest;
import cistern.bedside.MicrobeTest.Result;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What a negative PCR for herpes leaves open where the brain is acutely ill: the other virus, and
 * the first days, in which it can be negative.
 */
final class HerpesPcr {

  private HerpesPcr() {}

  /** The sentence; none where a rule says it already, or nothing is open. */
  static Optional<String> text(Observed observed, Urgent urgent) {
    List<MicrobeTest> sent =
        Cues.microbeTests(observed)
            .filter(t -> t.isMethod("pcr"))
            .filter(Cues::isForHerpes)
            .toList();
    boolean isNegative = sent.stream().anyMatch(t -> t.result() == Result.NEGATIVE);
    boolean isFound = sent.stream().anyMatch(MicrobeTest::isPositive);
    if (!Cues.ACUTE_BRAIN.answer(observed).isYes()
        || urgent.holds("herpes-possible")
        || !isNegative
        || isFound) {
      return Optional.empty();
    }
    List<String> open = new ArrayList<>();
    open("HSV", Cues::isForSimplex, sent).ifPresent(open::add);
    open("VZV", Cues::isForZoster, sent).ifPresent(open::add);
    Answer isEarly =
        Trigger.upTo(Quantity.ONSET_DAYS, "urgent.herpes.pcr-early.days.to").answer(observed);
    if (isEarly != Answer.NO) {
      open.add(observed.facts().word("say.herpes-pcr-early"));
    }
    return open.isEmpty()
        ? Optional.empty()
        : Optional.of("Encephalitis is not settled: " + String.join("; ", open) + ".");
  }

  private static Optional<String> open(
      String virus, Predicate<MicrobeTest> isFor, List<MicrobeTest> sent) {
    List<MicrobeTest> own = sent.stream().filter(isFor).toList();
    if (own.isEmpty()) {
      return Optional.of(virus + " PCR not done");
    }
    return own.stream().allMatch(t -> t.result() == Result.PENDING)
        ? Optional.of(virus + " PCR not back")
        : Optional.empty();
  }
}
