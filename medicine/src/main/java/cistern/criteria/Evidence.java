package cistern.criteria;

import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What the clinician knows beside the fluid: a missing answer is unknown, never no.
 *
 * @param presentation how the disease has shown itself
 * @param attacks how many attacks there were
 * @param objectiveLesions how many sites have objective clinical evidence
 * @param answers what is known of the other items
 */
public record Evidence(
    Presentation presentation, Count attacks, Count objectiveLesions, Map<Item, Answer> answers) {

  /** Nothing is known. */
  public static final Evidence UNKNOWN =
      new Evidence(Presentation.UNKNOWN, Count.UNKNOWN, Count.UNKNOWN, Map.of());

  /** Copies the answers. */
  public Evidence {
    answers = Map.copyOf(answers);
  }

  /** The answer to one item that is neither a count, nor the presentation, nor a CSF marker. */
  public Answer answer(Item item) {
    return answers.getOrDefault(item, Answer.UNKNOWN);
  }

  /** This evidence with another presentation. */
  public Evidence withPresentation(Presentation other) {
    return new Evidence(other, attacks, objectiveLesions, answers);
  }

  /** Where the evidence says two things that cannot both be true. */
  public List<EvidenceContradictsItself> contradictions() {
    List<EvidenceContradictsItself> found = new ArrayList<>();
    boolean isWithoutAttack =
        presentation == Presentation.NONE || presentation == Presentation.PROGRESSION;
    if (presentation == Presentation.ATTACK && attacks.most() == 0) {
      found.add(new EvidenceContradictsItself("evidence.attacks", "an attack, but no attack"));
    }
    if (isWithoutAttack && attacks.least() > 0) {
      found.add(
          new EvidenceContradictsItself(
              "evidence.attacks",
              "a presentation without attacks, but %s".formatted(attacks.toText())));
    }
    if (answer(Item.CORD_LESIONS_TWO_OR_MORE) == Answer.YES
        && answer(Item.SPINAL_CORD) == Answer.NO) {
      found.add(
          new EvidenceContradictsItself(
              "evidence.cordLesionsTwoOrMore", "two lesions of the cord, but no lesion there"));
    }
    return found;
  }
}
