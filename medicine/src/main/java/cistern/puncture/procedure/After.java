package cistern.puncture.procedure;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What happened after the puncture.
 *
 * @param asOf the time at which it is looked at
 * @param headache what the person reports, if anybody asked
 * @param sent what was sent to a laboratory
 * @param contact whom the person should call, local text
 */
public record After(
    Optional<OffsetDateTime> asOf,
    Optional<HeadacheRecord> headache,
    List<SentTest> sent,
    Optional<String> contact) {

  /** Nothing recorded. */
  public static final After UNKNOWN =
      new After(Optional.empty(), Optional.empty(), List.of(), Optional.empty());

  /** Copies the tests. */
  public After {
    sent = List.copyOf(sent);
  }

  /** The same, looked at at some time unless the work-up names one. */
  public After withTime(OffsetDateTime now) {
    return new After(asOf.or(() -> Optional.of(now)), headache, sent, contact);
  }

  /**
   * A test that was sent.
   *
   * @param test what
   * @param sentAt when
   * @param dueAt when the laboratory promised it, if it did
   * @param receivedAt when the result came
   * @param positive whether microbiology was positive, if it came
   * @param told who was told of it
   */
  public record SentTest(
      CsfTest test,
      Optional<OffsetDateTime> sentAt,
      Optional<OffsetDateTime> dueAt,
      Optional<OffsetDateTime> receivedAt,
      cistern.measurement.Answer positive,
      List<Told> told) {
    /** Copies the list. */
    public SentTest {
      told = List.copyOf(told);
    }
  }

  /**
   * Somebody who was told.
   *
   * @param who as given
   * @param at when
   */
  public record Told(String who, Optional<OffsetDateTime> at) {}
}
