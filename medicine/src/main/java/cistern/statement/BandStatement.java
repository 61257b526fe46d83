package cistern.statement;

import cistern.bands.BandPattern;

/**
 * What a pattern says beyond the answer: bands alike in both fluids, or a ladder.
 *
 * @param pattern four or five
 */
public record BandStatement(BandPattern pattern) implements Statement {

  @Override
  public String code() {
    return pattern == BandPattern.LADDER ? "monoclonal-ladder" : "bands-alike";
  }

  @Override
  public String text() {
    return pattern == BandPattern.LADDER
        ? "The bands form a regular ladder in both fluids, as a monoclonal immunoglobulin does:"
            + " serum immunofixation is suggested, if not done."
        : "The bands are alike in CSF and serum: a systemic immune response that passed into the"
            + " CSF, not made there. Multiple sclerosis becomes less likely by it, but stays"
            + " possible.";
  }
}
