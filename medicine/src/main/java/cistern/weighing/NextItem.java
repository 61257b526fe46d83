package cistern.weighing;

import cistern.criteria.Burden;

/**
 * One thing that is missing and would tell something.
 *
 * @param item the name in files
 * @param criteriaBits what it tells of the criteria's verdicts, in the edition where it tells more
 * @param differentialBits what it tells of which disease it is
 * @param burden what it costs the person
 * @param text what to do, in words
 */
public record NextItem(
    String item, double criteriaBits, double differentialBits, Burden burden, String text) {

  /** The larger of the two: both speak of the same person, so they are never added. */
  public double informationBits() {
    return Math.max(criteriaBits, differentialBits);
  }
}
