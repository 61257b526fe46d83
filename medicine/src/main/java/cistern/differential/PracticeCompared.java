package cistern.differential;

import cistern.fact.Status;

/**
 * A fact of the trade without a source beside what the counts say; where they differ, the count
 * wins.
 *
 * @param disease the disease it speaks of
 * @param isDifferent whether the counts contradict it
 * @param text both, in words
 */
public record PracticeCompared(Disease disease, boolean isDifferent, String text) {

  /** How well it is supported: by habit alone. */
  public Status status() {
    return Status.COMMON_PRACTICE;
  }
}
