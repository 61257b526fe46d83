package cistern.weighing;

import cistern.criteria.CriteriaVerdict;
import cistern.differential.Probability;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.SequencedMap;

/**
 * What is counted over many people, without a word on why.
 *
 * @param criteria the verdict of each edition, by its year
 * @param probability the number after the fluid, or why there is none
 */
public record Judgement(SequencedMap<String, CriteriaVerdict> criteria, Probability probability) {

  /** Copies the map. */
  public Judgement {
    criteria = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(criteria));
  }
}
