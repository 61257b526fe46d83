package cistern.cohort;

import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How far two readers agree beyond chance: Cohen's κ of a square table.
 *
 * @param kappa κ, from −1 to 1
 * @param error its standard error (Fleiss, Cohen and Everitt 1969), κ not assumed to be zero
 * @param cases how many cases both read
 */
public record Agreement(double kappa, double error, long cases) {

  /**
   * The agreement of a table; empty where chance alone would agree always, or nothing was read.
   *
   * @param counts rows the one reader's words, columns the other's, in the same order
   * @throws IllegalArgumentException when the table is not square
   */
  public static Optional<Agreement> of(long[][] counts) {
    int words = counts.length;
    double[] rows = new double[words];
    double[] columns = new double[words];
    long cases = 0;
    for (int i = 0; i < words; i++) {
      if (counts[i].length != words) {
        throw new IllegalArgumentException("a table of agreement is square");
      }
      for (int j = 0; j < words; j++) {
        rows[i] += counts[i][j];
        columns[j] += counts[i][j];
        cases += counts[i][j];
      }
    }
    double seen = 0;
    double expected = 0;
    for (int i = 0; i < words; i++) {
      rows[i] /= cases;
      columns[i] /= cases;
    }
    for (int i = 0; i < words; i++) {
      seen += (double) counts[i][i] / cases;
      expected += rows[i] * columns[i];
    }
    if (cases == 0 || expected >= 1) {
      return Optional.empty();
    }
    double kappa = (seen - expected) / (1 - expected);
    return Optional.of(new Agreement(kappa, error(counts, cases, rows, columns, kappa), cases));
  }

  private static double error(
      long[][] counts, long cases, double[] rows, double[] columns, double kappa) {
    double expected = 0;
    double spread = 0;
    for (int i = 0; i < rows.length; i++) {
      expected += rows[i] * columns[i];
      for (int j = 0; j < rows.length; j++) {
        double share = (double) counts[i][j] / cases;
        double margins = columns[i] + rows[j];
        double weight = i == j ? 1 - margins * (1 - kappa) : -margins * (1 - kappa);
        spread += share * weight * weight;
      }
    }
    double off = kappa - expected * (1 - kappa);
    return Math.sqrt((spread - off * off) / cases) / (1 - expected);
  }

  /** The interval of κ by the normal distribution, not beyond −1 and 1. */
  public ConfidenceInterval interval(double confidence) {
    double z = new NormalDistribution().inverseCumulativeProbability((1 + confidence) / 2);
    return new ConfidenceInterval(Math.max(-1, kappa - z * error), Math.min(1, kappa + z * error));
  }
}
