package cistern.clinic.status;

import cistern.clinic.cases.CaseVersion;
import cistern.exchange.json.InputProblem;
import java.util.List;

/**
 * A version of a case that was valid when it was kept and is not any more, because a later program
 * or another policy rejects it; or with which the program has a fault. Nothing of it is lost. The
 * message holds no value of a patient.
 */
public final class UnreadableCase extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient CaseVersion version;
  private final transient List<InputProblem> problems;

  UnreadableCase(CaseVersion version, List<InputProblem> problems) {
    super("the rules in force reject a version that is kept");
    this.version = version;
    this.problems = List.copyOf(problems);
  }

  /** The same, with the fault of the program that is behind it. */
  UnreadableCase because(Throwable fault) {
    initCause(fault);
    return this;
  }

  /** The version as it is kept. */
  public CaseVersion version() {
    return version;
  }

  /** Every reason, with its place; none when the fault is the program's own. */
  public List<InputProblem> problems() {
    return problems;
  }
}
