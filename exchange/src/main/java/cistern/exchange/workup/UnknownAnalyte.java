package cistern.exchange.workup;

import cistern.exchange.json.Shown;
import cistern.finding.Problem;

/**
 * A result of an analyte that this program does not know: kept, never used.
 *
 * @param place where its name stands
 * @param name as given
 */
public record UnknownAnalyte(String place, String name) implements Problem {

  @Override
  public String code() {
    return "unknown-analyte";
  }

  @Override
  public String text() {
    return "The analyte “%s” is not known here: it is kept and not interpreted."
        .formatted(Shown.of(name).text());
  }
}
