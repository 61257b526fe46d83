package cistern.weighing;

import cistern.criteria.PunctureEffect;
import cistern.differential.Outcome;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.SequencedMap;

/**
 * What positive and negative fluid change, all else as it stands.
 *
 * @param effects in each edition, by its year
 * @param bands in the differential, as if no antibody had been looked for in CSF
 * @param isPriorStated whether the probabilities rest on a stated prior; else only their movement
 *     counts, at even odds
 */
public record PunctureOutlook(
    SequencedMap<String, PunctureEffect> effects, Outcome bands, boolean isPriorStated) {

  /** Copies the map. */
  public PunctureOutlook {
    effects = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(effects));
  }
}
