package cistern.puncture.headache;

import cistern.fact.Grounds;
import java.util.List;

/**
 * The risk of headache after the puncture as a band, unvalidated.
 *
 * @param low the least, 0 to 1
 * @param high the most, 0 to 1
 * @param baselines the risk before any factor, one for each needle that is possible
 * @param factors every factor, counted or not
 * @param label what the band is worth
 * @param grounds what it rests on
 */
public record HeadacheRisk(
    double low,
    double high,
    List<Baseline> baselines,
    List<RiskFactor> factors,
    String label,
    Grounds grounds) {

  /** Copies the lists. */
  public HeadacheRisk {
    baselines = List.copyOf(baselines);
    factors = List.copyOf(factors);
  }

  /**
   * The risk before any factor.
   *
   * @param needle the kind of tip
   * @param risk 0 to 1
   * @param grounds what it rests on
   */
  public record Baseline(String needle, double risk, Grounds grounds) {}
}
