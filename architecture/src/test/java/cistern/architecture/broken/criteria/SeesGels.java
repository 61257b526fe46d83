package cistern.architecture.broken.criteria;

import cistern.architecture.broken.gel.Gel;

/** An arrow that goes through an array. */
public final class SeesGels {

  private SeesGels() {}

  /**
   * Counts.
   *
   * @param gels what the criteria must not see
   * @return how many
   */
  public static int size(Gel[] gels) {
    return gels.length;
  }
}
