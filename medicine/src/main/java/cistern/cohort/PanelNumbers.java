package cistern.cohort;

import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.measurement.Sample;
import cistern.uncertainty.ColumnChances;
import java.util.Map;

/**
 * The numbers of many panels, one array a quantity.
 *
 * @param computed quotients, fractions, amounts, indices and the rate; NaN where an input is
 *     missing
 * @param chances to lie above the limit, by code; none when they were not asked for
 */
public record PanelNumbers(QuotientColumns.Computed computed, Map<FindingCode, double[]> chances) {

  /** What computes them under some facts. */
  public static final class Kernel {

    private final QuotientColumns columns;
    private final ColumnChances chances;

    private Kernel(Facts facts) {
      columns = QuotientColumns.of(facts);
      chances = ColumnChances.of(facts);
    }

    /** The kernel under some facts. */
    public static Kernel of(Facts facts) {
      return new Kernel(facts);
    }

    /**
     * The numbers of some panels.
     *
     * @param concentrations in mg/L, all of one length; NaN where nothing was measured, and no zero
     *     that would divide
     * @param hasChances whether the chances are computed, which takes most of the time
     */
    public PanelNumbers compute(Map<Sample, double[]> concentrations, boolean hasChances) {
      QuotientColumns.Computed computed = columns.interpret(concentrations);
      return new PanelNumbers(
          computed, hasChances ? chances.overLimit(concentrations, computed::value) : Map.of());
    }
  }
}
