package cistern.urgent;

import static cistern.urgent.Trigger.any;
import static cistern.urgent.Trigger.over;
import static cistern.urgent.Trigger.stated;

import cistern.bedside.MicrobeTest;
import cistern.bedside.Sign;
import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The bacterial meningitis score of children from 29 days to 19 years with cells in the fluid
 * (Nigrovic 2002, doi 10.1542/peds.110.4.712; Nigrovic 2007, doi 10.1001/jama.297.1.52). No points
 * are no proof: it is said with what it missed.
 */
final class ChildhoodScore {

  private static final String KEY = "urgent.childhood-score.";
  private static final String GRAM_POINTS = KEY + "gram-points";

  private static final Trigger GRAM =
      stated("a Gram stain with bacteria", "microbiology", ChildhoodScore::gram);

  private static final List<Trigger> ONE_POINT_EACH =
      List.of(
          Trigger.from(Quantity.PROTEIN, KEY + "protein.from"),
          Trigger.from(Quantity.NEUTROPHILS, KEY + "neutrophils.from"),
          Trigger.from(Quantity.BLOOD_NEUTROPHILS, KEY + "blood-neutrophils.from"),
          Cues.SEIZURE);

  /** Children in whom it was not tried. */
  private static final Trigger LEFT_OUT =
      any(
          Cues.sign(Sign.ANTIBIOTICS_GIVEN),
          Cues.sign(Sign.PURPURA),
          Cues.IMMUNOCOMPROMISED,
          Cues.sign(Sign.NEUROSURGERY),
          over(Quantity.ERYTHROCYTES, KEY + "erythrocytes.over"));

  private static final Trigger CHILD_WITH_CELLS =
      Trigger.all(
          Trigger.from(Quantity.AGE_DAYS, KEY + "age-days.from"),
          Trigger.upTo(Quantity.AGE_YEARS, KEY + "age-years.to"),
          Trigger.from(Quantity.LEUKOCYTES, KEY + "leukocytes.from"));

  /** What says already, and more gravely, that bacteria are thought of. */
  private static final Set<String> GRAVER =
      Set.of("bacterial-pattern", "microbe-found", "lactate-and-cells");

  private ChildhoodScore() {}

  /** What it says, where infection is thought of and nothing graver has been said of it. */
  static Optional<String> text(Observed observed, Urgent urgent) {
    boolean isThoughtOf = Cues.isInfectionThoughtOf(observed) || urgent.isInfectionOpen();
    boolean isSaidAlready =
        urgent.open().stream().anyMatch(u -> u.tier() == Tier.T0 && GRAVER.contains(u.code()));
    return isThoughtOf
            && !isSaidAlready
            && CHILD_WITH_CELLS.answer(observed).isYes()
            && !LEFT_OUT.answer(observed).isYes()
        ? Optional.of("Bacterial meningitis score of children: " + points(observed))
        : Optional.empty();
  }

  private static String points(Observed observed) {
    List<Trigger> met = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    for (Trigger each : Stream.concat(Stream.of(GRAM), ONE_POINT_EACH.stream()).toList()) {
      switch (each.answer(observed)) {
        case YES -> met.add(each);
        case UNKNOWN -> missing.addAll(each.missing(observed));
        case NO -> {}
      }
    }
    if (!met.isEmpty()) {
      int gram = (int) observed.facts().number(GRAM_POINTS);
      int sum = met.size() + (met.contains(GRAM) ? gram - 1 : 0);
      String why =
          String.join(
              ", ",
              met.stream().flatMap(t -> t.reasons(observed).stream()).map(Reason::text).toList());
      return "%s%d of %d points (%s), so not of very low risk."
          .formatted(missing.isEmpty() ? "" : "at least ", sum, gram + ONE_POINT_EACH.size(), why);
    }
    missing.addAll(LEFT_OUT.missing(observed));
    return missing.isEmpty()
        ? "no points. " + observed.facts().word("say.childhood-score-of-none")
        : "not known (missing: %s).".formatted(String.join(", ", missing));
  }

  private static Answer gram(Observed observed) {
    List<MicrobeTest> stains =
        Cues.microbeTests(observed)
            .filter(t -> t.isMethod("gram") && t.result() != MicrobeTest.Result.PENDING)
            .toList();
    return stains.isEmpty()
        ? Answer.UNKNOWN
        : Cues.of(stains.stream().anyMatch(MicrobeTest::isPositive));
  }
}
