package cistern.puncture.aftercare;

import cistern.fact.Grounds;
import cistern.urgent.Urgency;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What follows a puncture, what must be said first leading.
 *
 * @param urgent emergencies and red flags, by how soon somebody must act
 * @param patch whether a blood patch may be spoken of
 * @param ladder what has been studied; empty while a red flag is there
 * @param calls when to call the person
 */
public record AfterCare(
    List<Urgency> urgent,
    PatchInformation patch,
    List<LadderStep> ladder,
    List<FollowUpCall> calls) {

  /** Copies the lists. */
  public AfterCare {
    urgent = List.copyOf(urgent);
    ladder = List.copyOf(ladder);
    calls = List.copyOf(calls);
  }

  /** What holds. */
  public List<Urgency> holding() {
    return urgent.stream().filter(Urgency::holds).toList();
  }

  /** What holds and nobody has answered. */
  public List<Urgency> unanswered() {
    return holding().stream().filter(u -> u.answered().isEmpty()).toList();
  }

  /**
   * Whether a blood patch may be spoken of.
   *
   * @param because why not; empty when it may
   * @param open what nobody has answered and must be looked at first
   */
  public record PatchInformation(List<Reason> because, List<String> open) {
    /** Copies the lists. */
    public PatchInformation {
      because = List.copyOf(because);
      open = List.copyOf(open);
    }

    /** Whether it is held back. */
    public boolean isHeld() {
      return !because.isEmpty();
    }
  }

  /**
   * Why a blood patch is not spoken of.
   *
   * @param code the name in files
   * @param text in a sentence
   * @param grounds what it rests on
   */
  public record Reason(String code, String text, Grounds grounds) {}

  /**
   * One thing that has been studied.
   *
   * @param code the name in files
   * @param text what was found
   * @param check what to look at first
   * @param grounds what it rests on
   */
  public record LadderStep(String code, String text, String check, Grounds grounds) {}

  /**
   * A call to the person.
   *
   * @param code the name in files
   * @param text what for
   * @param fromDay days after the puncture
   * @param toDay days after the puncture
   * @param from the time, when that of the puncture is known
   * @param to the time, when that of the puncture is known
   * @param grounds what it rests on
   */
  public record FollowUpCall(
      String code,
      String text,
      double fromDay,
      double toDay,
      Optional<OffsetDateTime> from,
      Optional<OffsetDateTime> to,
      Grounds grounds) {}
}
