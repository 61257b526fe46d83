package cistern.followup;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Printed;

/**
 * How often a band result changed in a published series of repeated punctures, with its Wilson 95 %
 * interval: centre (p + z²/2n)/(1 + z²/n), half width z·√(p(1 − p)/n + z²/4n²)/(1 + z²/n).
 *
 * @param count people whose result changed so
 * @param total people punctured again
 * @param lower of the interval, 0 to 1
 * @param upper of the interval, 0 to 1
 * @param grounds what the counts rest on
 */
public record Persistence(double count, double total, double lower, double upper, Grounds grounds) {

  /** One count of one series. */
  static Persistence of(Facts facts, String series, String change) {
    String counted = "persistence." + series + "." + change;
    String total = "persistence." + series + ".total";
    return of(
        facts.number(counted),
        facts.number(total),
        facts.number("change.z"),
        facts.grounds(counted, total));
  }

  static Persistence of(double count, double total, double z, Grounds grounds) {
    double p = count / total;
    double square = z * z;
    double centre = (p + square / (2 * total)) / (1 + square / total);
    double half =
        z * Math.sqrt(p * (1 - p) / total + square / (4 * total * total)) / (1 + square / total);
    return new Persistence(
        count, total, Math.max(0, centre - half), Math.min(1, centre + half), grounds);
  }

  /** In words, {@code 29 of 227 (13 %, 9–18)}. */
  public String toText() {
    return Printed.decimals(count, 0)
        + " of "
        + Printed.decimals(total, 0)
        + " ("
        + percent(count / total)
        + " %, "
        + percent(lower)
        + "–"
        + percent(upper)
        + ")";
  }

  private static String percent(double share) {
    return Printed.decimals(share * 100, 0);
  }
}
