package cistern.weighing;

import cistern.criteria.CriteriaResult;
import cistern.criteria.CsfPositivity;
import cistern.criteria.EvidenceContradictsItself;
import cistern.criteria.Prompt;
import cistern.differential.DifferentialResult;
import cistern.redflag.RedFlag;
import java.util.List;
import java.util.Optional;

/**
 * Panel, bands and evidence brought together.
 *
 * @param criteria what each edition says, never merged
 * @param difference which input makes the difference where the editions disagree
 * @param prompts what the editions ask to think of
 * @param fluid whether the fluid counts as positive
 * @param differential what else it could be
 * @param flags what argues against MS
 * @param next what is missing, most telling for its burden first
 * @param puncture what the fluid changes
 * @param problems where the evidence contradicts itself
 */
public record Weighed(
    List<CriteriaResult> criteria,
    Optional<String> difference,
    List<Prompt> prompts,
    CsfPositivity fluid,
    DifferentialResult differential,
    List<RedFlag> flags,
    List<NextItem> next,
    PunctureOutlook puncture,
    List<EvidenceContradictsItself> problems) {

  /** Copies the lists. */
  public Weighed {
    criteria = List.copyOf(criteria);
    prompts = List.copyOf(prompts);
    flags = List.copyOf(flags);
    next = List.copyOf(next);
    problems = List.copyOf(problems);
  }
}
