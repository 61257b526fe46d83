package cistern.differential;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.special.Erf;

/**
 * Fixed rules of integration: a normal variable by 21 equal steps on ±5 standard deviations, a
 * uniform one by nine points of Gauss and Legendre (Abramowitz and Stegun 1964, table 25.4).
 */
final class Quadrature {

  /** What is left out at either end of an interval. */
  static final double TAIL = 0.025;

  private static final int STEPS = 10;
  private static final double WIDTH = 0.5;
  private static final double REACH = 30;
  private static final int HALVINGS = 60;
  private static final double[] NODES = {
    -0.9681602395076261,
    -0.8360311073266358,
    -0.6133714327005904,
    -0.3242534234038089,
    0,
    0.3242534234038089,
    0.6133714327005904,
    0.8360311073266358,
    0.9681602395076261
  };
  private static final double[] WEIGHTS = {
    0.0812743883615744,
    0.1806481606948574,
    0.2606106964029354,
    0.3123470770400029,
    0.3302393550012598,
    0.3123470770400029,
    0.2606106964029354,
    0.1806481606948574,
    0.0812743883615744
  };
  private static final double[] NORMAL = normalWeights();

  private Quadrature() {}

  /** Takes a point of a normal variable. */
  interface NormalPoint {
    void take(double deviation, double weight);
  }

  /** Takes a point of a prior range and of a normal variable beside it. */
  interface PriorPoint {
    void take(double prior, double deviation, double weight);
  }

  private static double[] normalWeights() {
    double[] weights = new double[2 * STEPS + 1];
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      double z = (i - STEPS) * WIDTH;
      weights[i] = Math.exp(-z * z / 2);
      sum += weights[i];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  static void overNormal(NormalPoint take) {
    for (int i = 0; i < NORMAL.length; i++) {
      take.take((i - STEPS) * WIDTH, NORMAL[i]);
    }
  }

  static void over(Prior prior, PriorPoint take) {
    double half = (prior.high() - prior.low()) / 2;
    for (int i = 0; i < NODES.length; i++) {
      double pi = prior.middle() + half * NODES[i];
      double weight = WEIGHTS[i] / 2;
      overNormal((z, w) -> take.take(pi, z, weight * w));
    }
  }

  static double normal(double x) {
    return Erf.erfc(-x / Math.sqrt(2)) / 2;
  }

  /** Where a rising function of a probability takes a value, by bisection of the logit. */
  static double inverse(DoubleUnaryOperator rising, double value) {
    double low = -REACH;
    double high = REACH;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (rising.applyAsDouble(CohortModel.inverseLogit(middle)) < value) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return CohortModel.inverseLogit((low + high) / 2);
  }
}
