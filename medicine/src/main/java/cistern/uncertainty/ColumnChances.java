package cistern.uncertainty;

import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.finding.FindingCode.Kind;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * The chance that measurement error alone leaves for a quantity to lie above its limit, for many
 * panels, one array a quantity: the intrathecal fractions, and the indices that have a limit. The
 * same numbers, to the last bit, as {@link Uncertainties} gives for each panel whose results state
 * no imprecision of their own.
 */
public final class ColumnChances {

  private static final List<Analyte> PROTEINS =
      List.of(Analyte.IGG, Analyte.IGA, Analyte.IGM, Analyte.KAPPA);

  private final Rules rules;
  private final Imprecision imprecision;
  private final Map<FindingCode, Threshold> limits = new EnumMap<>(FindingCode.class);

  private ColumnChances(Facts facts) {
    rules = Rules.of(facts);
    imprecision = Imprecision.of(facts);
    for (Analyte protein : PROTEINS) {
      limits.put(FindingCode.of(Kind.FRACTION, protein), Threshold.over(0));
    }
    limits.put(FindingCode.IGG_INDEX, Threshold.over(facts.number("igg-index.upper")));
    limits.put(FindingCode.KAPPA_INDEX, Threshold.from(facts.number("kappa-index.upper")));
  }

  /** The chances under some facts. */
  public static ColumnChances of(Facts facts) {
    return new ColumnChances(facts);
  }

  /**
   * The chances of some panels.
   *
   * @param concentrations of albumin and the proteins in both fluids, mg/L, all of one length; NaN
   *     where nothing was measured
   * @param values the column of a quantity, of the same panels
   * @return NaN where an input is missing, or where the facts state no imprecision of any input
   */
  public Map<FindingCode, double[]> overLimit(
      Map<Sample, double[]> concentrations, Function<FindingCode, double[]> values) {
    int rows = values.apply(FindingCode.ALBUMIN_QUOTIENT).length;
    Map<FindingCode, double[]> chances = new EnumMap<>(FindingCode.class);
    limits.keySet().forEach(code -> chances.put(code, new double[rows]));
    for (int row = 0; row < rows; row++) {
      PanelErrors errors = PanelErrors.of(concentrations, row, imprecision);
      PanelSpreads spreads = new PanelSpreads(errors, rules);
      for (Map.Entry<FindingCode, double[]> column : chances.entrySet()) {
        FindingCode code = column.getKey();
        column.getValue()[row] = chance(spreads, code, values.apply(code)[row]);
      }
    }
    return chances;
  }

  private double chance(PanelSpreads spreads, FindingCode code, double value) {
    Threshold limit = limits.getOrDefault(code, Threshold.over(0));
    List<Sample> inputs =
        List.of(
            Sample.csf(code.analyte()),
            Sample.serum(code.analyte()),
            Sample.csf(Analyte.ALBUMIN),
            Sample.serum(Analyte.ALBUMIN));
    if (Double.isNaN(value) || !spreads.errors().isImprecisionKnown(inputs)) {
      return Double.NaN;
    }
    return spreads.errors().isErrorFree(inputs)
        ? Uncertainties.certain(value, limit)
        : Math.clamp(spreads.chanceOver(code, limit), 0, 1);
  }
}
