package cistern.bench;

import cistern.cohort.QuotientColumns;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;

/**
 * The usual way to an interval: draw every concentration 20,000 times, compute every quantity on
 * every draw with the fastest kernel that we have, sort.
 */
final class DrawnPanels {

  private static final int DRAWS = 20_000;
  private static final double CV = 0.05;
  private static final double SIGMA = Math.sqrt(Math.log1p(CV * CV));
  private static final double TAIL = 0.025;

  private final QuotientColumns columns;
  private final QuotientColumns.Computed computed;
  private final Map<Sample, double[]> drawn = new HashMap<>();
  private final Random random;

  DrawnPanels(Facts facts, long seed) {
    columns = QuotientColumns.of(facts);
    computed = columns.columns(DRAWS);
    columns.needed().forEach(sample -> drawn.put(sample, new double[DRAWS]));
    random = new Random(seed);
  }

  /** The ends of the 95 % interval and the share over the limit, by code. */
  Map<FindingCode, double[]> summarise(CheckedPanel panel) {
    drawn.forEach(
        (sample, column) -> {
          double value = panel.panel().find(sample).orElseThrow().value().exactly();
          Arrays.setAll(column, i -> value * Math.exp(SIGMA * random.nextGaussian()));
        });
    columns.interpret(drawn, computed);
    Map<FindingCode, double[]> summary = new EnumMap<>(FindingCode.class);
    for (FindingCode code : computed.codes()) {
      double[] values = computed.value(code);
      Arrays.sort(values);
      int low = (int) (TAIL * DRAWS);
      double over = Arrays.stream(values).filter(v -> v > 0).count() / (double) DRAWS;
      summary.put(code, new double[] {values[low], values[DRAWS - 1 - low], over});
    }
    return summary;
  }
}
