package cistern.puncture.specimen;

import cistern.fact.Grounds;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.CsfTest;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * One test that was sent.
 *
 * @param test what
 * @param state how it stands
 * @param dueAt when it is due: as the laboratory promised, else by the local turnaround
 * @param told who was told of it
 * @param grounds what the due date rests on
 */
public record Outstanding(
    CsfTest test, State state, Optional<OffsetDateTime> dueAt, List<Told> told, Grounds grounds) {

  /** Copies the list. */
  public Outstanding {
    told = List.copyOf(told);
  }

  /** How a test stands. */
  public enum State {
    RECEIVED("received"),
    OUTSTANDING("outstanding"),
    OVERDUE("overdue"),
    /** No due date, or nobody said when it is looked at. */
    UNKNOWN("unknown");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
