package cistern.weighing;

import cistern.bedside.Bedside;
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
 * @param bedside signs, treatments, microbes and who answered an urgent rule
 */
public record ClinicalPicture(
    Evidence evidence, Optional<Prior> prior, List<Serology> serology, Bedside bedside) {

  /** Nothing is known. */
  public static final ClinicalPicture UNKNOWN =
      new ClinicalPicture(Evidence.UNKNOWN, Optional.empty(), List.of());

  /** What is known where nothing is said of the bedside. */
  public ClinicalPicture(Evidence evidence, Optional<Prior> prior, List<Serology> serology) {
    this(evidence, prior, serology, Bedside.UNKNOWN);
  }

  /** The same with something else known at the bedside. */
  public ClinicalPicture withBedside(Bedside known) {
    return new ClinicalPicture(evidence, prior, serology, known);
  }

  /** Copies the list. */
  public ClinicalPicture {
    serology = List.copyOf(serology);
  }

  /** Whether anything of the evidence was stated. */
  public boolean isEvidenceStated() {
    return !evidence.equals(Evidence.UNKNOWN);
  }
}
