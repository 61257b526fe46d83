package cistern.exchange.intake;

import cistern.cohort.CohortMember;
import cistern.cohort.ColumnProfile;
import cistern.exchange.workup.RecordedReader;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.interpretation.Interpreter;
import java.util.List;

/**
 * What a cohort makes of each work-up that was read, on whatever machine: pure functions of the
 * work-up and the facts, so that a part that is done twice gives the same twice.
 */
public final class CohortReading {

  private final Facts facts;
  private final Interpreter interpreter;
  private final RecordedReader recorded;

  private CohortReading(Facts facts) {
    this.facts = facts;
    this.interpreter = Interpreter.of(facts);
    this.recorded = RecordedReader.of(facts);
  }

  /** A reading under some facts. */
  public static CohortReading of(Facts facts) {
    return new CohortReading(facts);
  }

  /** One puncture, interpreted. */
  public CohortMember interpret(Understood read) {
    return CohortMember.of(interpreter.judge(read.workup()), recorded.read(read.document()), facts);
  }

  /** How the columns of some work-ups lie, before anything is computed from them. */
  public ColumnProfile profile(List<Understood> all) {
    return switch (all.size()) {
      case 0 -> ColumnProfile.NONE;
      case 1 -> ColumnProfile.of(all.getFirst().workup().panel(), facts);
      default -> {
        // Halves are merged with halves, so that a large profile is not copied for every row.
        int half = all.size() / 2;
        yield profile(all.subList(0, half)).merge(profile(all.subList(half, all.size())));
      }
    };
  }
}
