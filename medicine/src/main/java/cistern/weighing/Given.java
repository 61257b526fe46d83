package cistern.weighing;

import cistern.bands.BandReading;
import cistern.criteria.Evidence;
import cistern.differential.Prior;
import cistern.differential.Serology;
import cistern.finding.Findings;
import cistern.panel.CheckedPanel;
import java.util.List;
import java.util.Optional;

/**
 * What is weighed.
 *
 * @param panel the panel with its problems
 * @param findings every derived quantity
 * @param bands what the gel says
 * @param evidence what the clinician knows
 * @param prior how likely MS was before, if stated
 * @param serology tests for single antibodies
 */
public record Given(
    CheckedPanel panel,
    Findings findings,
    BandReading bands,
    Evidence evidence,
    Optional<Prior> prior,
    List<Serology> serology) {

  /** Copies the list. */
  public Given {
    serology = List.copyOf(serology);
  }
}
