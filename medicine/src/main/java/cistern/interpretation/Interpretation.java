package cistern.interpretation;

import cistern.analysis.Puncture;
import cistern.bands.BandReading;
import cistern.conflict.Conflict;
import cistern.finding.Findings;
import cistern.finding.Problem;
import cistern.panel.CheckedPanel;
import cistern.statement.Statement;
import cistern.uncertainty.RepeatChange;
import cistern.urgent.Alerts;
import cistern.weighing.Weighed;
import java.util.List;
import java.util.Optional;

/**
 * Everything that one puncture says, and what it rests on.
 *
 * @param workup what was given
 * @param factsVersion the fact tables in force
 * @param policy the local policy in force
 * @param puncture what was found
 * @param repeat how often verdicts would change if everything were measured once more
 * @param alerts what comes before any verdict
 * @param weighed criteria, differential, red flags and what would settle it
 * @param conflicts what disagrees
 * @param statements what a specialist would write, answer first
 * @param problems everything wrong with the input, in one list
 * @param cautions what must be said beside it
 */
public record Interpretation(
    Workup workup,
    String factsVersion,
    Optional<String> policy,
    Puncture puncture,
    RepeatChange repeat,
    Alerts alerts,
    Weighed weighed,
    List<Conflict> conflicts,
    List<Statement> statements,
    List<Problem> problems,
    List<Caution> cautions) {

  /** Copies the lists. */
  public Interpretation {
    conflicts = List.copyOf(conflicts);
    statements = List.copyOf(statements);
    problems = List.copyOf(problems);
    cautions = List.copyOf(cautions);
  }

  /** The panel with everything that is wrong with it. */
  public CheckedPanel panel() {
    return puncture.panel();
  }

  /** Every derived quantity. */
  public Findings findings() {
    return puncture.findings();
  }

  /** What follows from the gel. */
  public BandReading bands() {
    return puncture.bands();
  }
}
