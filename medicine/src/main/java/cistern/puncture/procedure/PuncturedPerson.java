package cistern.puncture.procedure;

import cistern.bedside.Bedside;
import cistern.measurement.Answer;
import cistern.measurement.Interval;
import cistern.urgent.Urgent;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The person and the draw, as far as a plan depends on them.
 *
 * @param ageYears not negative
 * @param sex as given
 * @param pregnancy whether pregnant
 * @param headacheDisorder whether one is known from elsewhere in the work-up
 * @param draw the puncture as recorded
 * @param kidney what the clearance of drugs depends on
 * @param beside what is known beside the puncture
 */
public record PuncturedPerson(
    OptionalDouble ageYears,
    Optional<String> sex,
    Answer pregnancy,
    Answer headacheDisorder,
    Draw draw,
    Kidney kidney,
    Beside beside) {

  /** Somebody of whom nothing is known. */
  public static final PuncturedPerson UNKNOWN =
      new PuncturedPerson(
          OptionalDouble.empty(), Optional.empty(), Answer.UNKNOWN, Answer.UNKNOWN, Draw.UNKNOWN);

  /** Somebody of whose kidneys, bedside and fluid nothing is known. */
  public PuncturedPerson(
      OptionalDouble ageYears,
      Optional<String> sex,
      Answer pregnancy,
      Answer headacheDisorder,
      Draw draw) {
    this(ageYears, sex, pregnancy, headacheDisorder, draw, Kidney.UNKNOWN, Beside.UNKNOWN);
  }

  /** The same with other kidneys. */
  public PuncturedPerson with(Kidney known) {
    return new PuncturedPerson(ageYears, sex, pregnancy, headacheDisorder, draw, known, beside);
  }

  /** The same with something else known beside the puncture. */
  public PuncturedPerson with(Beside known) {
    return new PuncturedPerson(ageYears, sex, pregnancy, headacheDisorder, draw, kidney, known);
  }

  /** Whether female, when stated. */
  public Answer female() {
    if (sex.isEmpty()) {
      return Answer.UNKNOWN;
    }
    return switch (sex.get()) {
      case "female" -> Answer.YES;
      case "male" -> Answer.NO;
      default -> Answer.UNKNOWN;
    };
  }

  /**
   * What the clearance of drugs depends on.
   *
   * @param weightKg actual weight, kg
   * @param creatinine in serum, µmol/L
   * @param takenAt when the blood was taken
   */
  public record Kidney(
      OptionalDouble weightKg, OptionalDouble creatinine, Optional<OffsetDateTime> takenAt) {
    /** Nothing known. */
    public static final Kidney UNKNOWN =
        new Kidney(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());
  }

  /**
   * What is known beside the puncture.
   *
   * @param bedside signs, treatments, and who answered an urgent rule
   * @param fluid what must be said first about the fluid of the same puncture
   */
  public record Beside(Bedside bedside, Urgent fluid) {
    /** Nothing known. */
    public static final Beside UNKNOWN = new Beside(Bedside.UNKNOWN, Urgent.NONE);
  }

  /**
   * The puncture as recorded.
   *
   * @param at when
   * @param volumeMl how much, mL
   * @param csfGlucose mmol/L
   * @param csfLeukocytes per µL
   */
  public record Draw(
      Optional<OffsetDateTime> at,
      OptionalDouble volumeMl,
      Optional<Interval> csfGlucose,
      Optional<Interval> csfLeukocytes) {
    /** Nothing recorded. */
    public static final Draw UNKNOWN =
        new Draw(Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty());
  }
}
