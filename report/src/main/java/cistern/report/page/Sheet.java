package cistern.report.page;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;

/**
 * What every block of a page is written from.
 *
 * @param interpretation what is said
 * @param facts in force, for the figures
 * @param sources numbered while the page is written
 * @param medium where it is read
 * @param software the name and version of the program
 */
record Sheet(
    Interpretation interpretation, Facts facts, Sources sources, Medium medium, String software) {

  /** A sheet without sources yet. */
  static Sheet of(Interpretation interpretation, Facts facts, Medium medium, String software) {
    return new Sheet(interpretation, facts, new Sources(medium), medium, software);
  }

  boolean isPaper() {
    return medium == Medium.PAPER;
  }
}
