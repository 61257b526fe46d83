package cistern.interpretation;

import cistern.criteria.Evidence;
import cistern.differential.Prior;
import cistern.differential.Serology;
import java.util.List;
import java.util.Optional;

/**
 * What the clinician knows beside the fluid.
 *
 * @param evidence for the criteria
 * @param prior how likely MS was before the puncture, if stated
 * @param serology tests for single antibodies
 */
public record ClinicalPicture(Evidence evidence, Optional<Prior> prior, List<Serology> serology) {

  /** Nothing is known. */
  public static final ClinicalPicture UNKNOWN =
      new ClinicalPicture(Evidence.UNKNOWN, Optional.empty(), List.of());

  /** Copies the list. */
  public ClinicalPicture {
    serology = List.copyOf(serology);
  }

  /** Whether anything of the evidence was stated. */
  public boolean isEvidenceStated() {
    return !evidence.equals(Evidence.UNKNOWN);
  }
}
