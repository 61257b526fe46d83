package cistern.puncture.procedure;

import cistern.measurement.Answer;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a person reports after the puncture.
 *
 * @param present whether there is a headache at all
 * @param answers what was asked of it
 * @param redFlags the red-flag questions that were answered
 * @param onsetAt when it began
 * @param endedAt when it was gone
 * @param days the severity day by day, as given
 */
public record HeadacheRecord(
    Answer present,
    Answers answers,
    Map<RedFlag, Answer> redFlags,
    Optional<OffsetDateTime> onsetAt,
    Optional<OffsetDateTime> endedAt,
    List<Day> days) {

  /** Nobody asked. */
  public static final HeadacheRecord UNKNOWN =
      new HeadacheRecord(
          Answer.UNKNOWN, Answers.NONE, Map.of(), Optional.empty(), Optional.empty(), List.of());

  /** Copies the collections. */
  public HeadacheRecord {
    redFlags = redFlags.isEmpty() ? Map.of() : new EnumMap<>(redFlags);
    days = List.copyOf(days);
  }

  /** The answer to a red-flag question. */
  public Answer answer(RedFlag flag) {
    return redFlags.getOrDefault(flag, Answer.UNKNOWN);
  }

  /**
   * One day.
   *
   * @param day days since the puncture, 0 the day itself
   * @param severity 0 none to 10 worst
   */
  public record Day(int day, double severity) {}
}
