package cistern.exchange.workup;

import cistern.finding.Problem;

/**
 * An analyte that this program does not know: kept, never used.
 *
 * @param place its JSON path
 */
record UnknownAnalyte(String place) implements Problem {

  @Override
  public String code() {
    return "unknown-analyte";
  }

  @Override
  public String text() {
    return "This analyte is not known here: its result is kept and not used. Check its spelling.";
  }
}
