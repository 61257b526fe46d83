package cistern.urgent;

import cistern.bedside.MicrobeTest;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a negative PCR for herpes leaves open where the brain is acutely ill: the other virus, and
 * the first days, in which it can be negative (de Montmollin 2022).
 */
final class HerpesPcr {

  private static final List<String> BOTH = List.of("panel", "enceph", "mening");
  private static final List<String> SIMPLEX = List.of("hsv", "simplex", "herpes");
  private static final List<String> ZOSTER = List.of("vzv", "zoster", "varicella");

  private HerpesPcr() {}

  /** The sentence; none where a rule says it already, or nothing is open. */
  static Optional<String> text(Observed observed, Urgent urgent) {
    List<MicrobeTest> done =
        Cues.microbeTests(observed)
            .filter(t -> t.isMethod("pcr") && t.result() == MicrobeTest.Result.NEGATIVE)
            .toList();
    if (!Cues.ACUTE_BRAIN.answer(observed).isYes()
        || urgent.holds("herpes-possible")
        || done.isEmpty()) {
      return Optional.empty();
    }
    List<String> open = new ArrayList<>();
    if (!isCovered(done, SIMPLEX)) {
      open.add("HSV PCR not done");
    }
    if (!isCovered(done, ZOSTER)) {
      open.add("VZV PCR not done");
    }
    Answer isEarly =
        Trigger.upTo(Quantity.ONSET_DAYS, "urgent.herpes.pcr-early.days.to").answer(observed);
    if (isEarly != Answer.NO) {
      open.add("a PCR of the first days can be negative: repeat at 3 to 7 days");
    }
    return open.isEmpty()
        ? Optional.empty()
        : Optional.of("Encephalitis is not settled: " + String.join("; ", open) + ".");
  }

  private static boolean isCovered(List<MicrobeTest> done, List<String> names) {
    return done.stream()
        .anyMatch(
            t ->
                t.target().isEmpty()
                    || Stream.concat(names.stream(), BOTH.stream()).anyMatch(t::isFor));
  }
}
