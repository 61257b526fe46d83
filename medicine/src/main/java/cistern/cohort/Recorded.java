package cistern.cohort;

import cistern.bands.BandReport;
import cistern.measurement.Answer;
import java.util.Optional;

/**
 * What a work-up keeps for a cohort beside what is interpreted.
 *
 * @param diagnosis what it turned out to be, as the work-up says it; no diagnosis where it says
 *     {@code unknown}
 * @param isAmended whether a result was corrected after it had been sent
 * @param second what a second reader made of the same gel
 */
public record Recorded(Optional<String> diagnosis, Answer isAmended, Optional<BandReport> second) {

  /** Nothing is recorded. */
  public static final Recorded NOTHING =
      new Recorded(Optional.empty(), Answer.UNKNOWN, Optional.empty());
}
