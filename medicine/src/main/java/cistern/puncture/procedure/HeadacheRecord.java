package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person reports after the puncture.
 *
 * @param present whether there is a headache at all
 * @param answers what was asked of it
 * @param redFlags the red-flag questions that were answered
 * @param onsetAt when it began
 * @param endedAt when it was gone
 * @param days the severity day by day, as given
 * @param pressure of the blood, if measured
 */
public record HeadacheRecord(
    Answer present,
    ProcedureAnswers answers,
    Map<WarningSign, Answer> redFlags,
    Optional<OffsetDateTime> onsetAt,
    Optional<OffsetDateTime> endedAt,
    List<Day> days,
    BloodPressure pressure) {

  /** Nobody asked. */
  public static final HeadacheRecord UNKNOWN =
      new HeadacheRecord(
          Answer.UNKNOWN,
          ProcedureAnswers.NONE,
          Map.of(),
          Optional.empty(),
          Optional.empty(),
          List.of());

  /** A report without the blood's pressure. */
  public HeadacheRecord(
      Answer present,
      ProcedureAnswers answers,
      Map<WarningSign, Answer> redFlags,
      Optional<OffsetDateTime> onsetAt,
      Optional<OffsetDateTime> endedAt,
      List<Day> days) {
    this(present, answers, redFlags, onsetAt, endedAt, days, BloodPressure.UNKNOWN);
  }

  /** Copies the collections. */
  public HeadacheRecord {
    redFlags = redFlags.isEmpty() ? Map.of() : new EnumMap<>(redFlags);
    days = List.copyOf(days);
  }

  /** The answer to a red-flag question. */
  public Answer answer(WarningSign flag) {
    return redFlags.getOrDefault(flag, Answer.UNKNOWN);
  }

  /**
   * One day.
   *
   * @param day days since the puncture, 0 the day itself
   * @param severity 0 none to 10 worst
   */
  public record Day(int day, double severity) {}

  /** mm[Hg]. */
  public OptionalDouble systolic() {
    return pressure.systolic();
  }

  /** mm[Hg]. */
  public OptionalDouble diastolic() {
    return pressure.diastolic();
  }

  /**
   * Blood pressure.
   *
   * @param systolic mm[Hg]
   * @param diastolic mm[Hg]
   */
  public record BloodPressure(OptionalDouble systolic, OptionalDouble diastolic) {
    /** Not measured. */
    public static final BloodPressure UNKNOWN =
        new BloodPressure(OptionalDouble.empty(), OptionalDouble.empty());
  }
}
