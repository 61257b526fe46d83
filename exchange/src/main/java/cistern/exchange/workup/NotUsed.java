package cistern.exchange.workup;

import cistern.exchange.json.Shown;
import cistern.exchange.lab.LeftOver.Why;
import cistern.finding.Problem;

/**
 * A part of a laboratory's report that has no part in the work-up: kept, and listed.
 *
 * @param place where the work-up keeps it
 * @param origin where it stood in the report
 * @param what its code or name; may be empty
 * @param why the reason
 */
record NotUsed(String place, String origin, String what, Why why) implements Problem {

  @Override
  public String code() {
    return why.key();
  }

  @Override
  public String text() {
    String name = what.isEmpty() ? "" : " “" + Shown.of(what).text() + "”";
    return "Of the report, " + Shown.of(origin).text() + name + ": " + why.sentence();
  }
}
