package cistern.puncture.readiness;

import cistern.fact.Facts;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.OpeningPressure.RangeAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Opening pressure by position and age. Without position or age nothing is judged. */
public final class PressureRanges {

  private static final double PASCALS_PER_KILOPASCAL = 1000;

  private final Facts facts;

  private PressureRanges(Facts facts) {
    this.facts = facts;
  }

  /** The ranges under some facts. */
  public static PressureRanges of(Facts facts) {
    return new PressureRanges(facts);
  }

  /** The pressure of a puncture, if it was measured. */
  public Optional<OpeningPressure> check(Done done, PuncturedPerson subject) {
    OptionalDouble pressure = done.openingPressure();
    return pressure.isPresent()
        ? Optional.of(check(pressure.getAsDouble(), done, subject))
        : Optional.empty();
  }

  private OpeningPressure check(double cmWater, Done done, PuncturedPerson subject) {
    double pascals = cmWater * facts.number("pressure.cm-water");
    return new OpeningPressure(
        cmWater,
        pascals / facts.number("pressure.mm-hg"),
        pascals / PASCALS_PER_KILOPASCAL,
        ranges(cmWater, done.position(), subject.ageYears()),
        notes(cmWater, done, subject.ageYears()));
  }

  private List<RangeAnswer> ranges(double value, Position position, OptionalDouble age) {
    boolean isJudged =
        (position == Position.LATERAL || position == Position.SUPINE) && age.isPresent();
    return codes(position, age).stream().map(code -> range(code, value, isJudged)).toList();
  }

  private List<String> codes(Position position, OptionalDouble age) {
    if (age.isPresent() && age.getAsDouble() < facts.number("pressure.child.below")) {
      return List.of("child");
    }
    List<String> codes = new ArrayList<>(List.of("adult-95"));
    if (position != Position.SUPINE) {
      codes.add("adult-lateral");
    }
    if (position != Position.LATERAL) {
      codes.add("adult-supine");
    }
    codes.addAll(List.of("adult-old-text", "adult-review"));
    return codes;
  }

  private RangeAnswer range(String code, double value, boolean isJudged) {
    String key = "pressure." + code;
    double lower = facts.number(key + ".lower");
    double upper = facts.number(key + ".upper");
    Verdict verdict = Verdict.UNDETERMINED;
    if (isJudged) {
      verdict = value < lower ? Verdict.BELOW : value > upper ? Verdict.ABOVE : Verdict.WITHIN;
    }
    return new RangeAnswer(
        code, lower, upper, verdict, facts.grounds(key + ".lower", key + ".upper"));
  }

  private List<String> notes(double cmWater, Done done, OptionalDouble age) {
    List<String> notes = new ArrayList<>();
    switch (done.position()) {
      case SITTING -> notes.add(facts.word("pressure.note.position"));
      case UNKNOWN ->
          notes.add("The position is not recorded, so nothing is judged: was the person lying?");
      case PRONE -> notes.add(facts.word("pressure.note.prone"));
      case LATERAL, SUPINE -> lowNote(cmWater, notes);
    }
    if (age.isEmpty()) {
      notes.add("The age is not recorded, so nothing is judged.");
    }
    if (done.answers().answer(Question.SEDATION) != Answer.NO) {
      notes.add(
          done.answers().isYes(Question.SEDATION)
              ? "Sedation was given, which raises it in children."
              : "Whether sedation was given is not recorded.");
    }
    return notes;
  }

  private void lowNote(double cmWater, List<String> notes) {
    if (cmWater < facts.number("pressure.low")) {
      notes.add("Under 60 mm: low by the headache classification (ICHD-3, 7.2).");
    }
  }
}
