package cistern.weighing;

import cistern.criteria.PunctureEffect;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.SequencedMap;

/**
 * What positive and negative fluid change, all else as it stands.
 *
 * @param effects in each edition, by its year
 */
public record PunctureOutlook(SequencedMap<String, PunctureEffect> effects) {

  /** Copies the map. */
  public PunctureOutlook {
    effects = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(effects));
  }
}
