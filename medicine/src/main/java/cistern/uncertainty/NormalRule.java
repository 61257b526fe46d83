package cistern.uncertainty;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.HermiteRuleFactory;
import org.hipparchus.analysis.integration.gauss.LegendreRuleFactory;

/**
 * A quadrature rule for the expectation of a function of a standard normal variable: points z and
 * weights that add up to one.
 */
final class NormalRule {

  /** Standard deviations of a logarithm above which a curve is no longer nearly straight. */
  private static final double WIDE = 0.3;

  private static final NormalRule CENTRE = new NormalRule(new double[] {0}, new double[] {1});
  private static final NormalRule LINE = hermite(11);
  private static final NormalRule PLANE = hermite(7);
  private static final NormalRule PIECE = points(legendre(4));

  /** Where the density itself bends. */
  private static final double[] BASE = {-8, -5, -3, -2, -1, 0, 1, 2, 3, 5, 8};

  /** Where a normal distribution function bends, in its own standard deviations. */
  private static final double[] BENDS = {-5, -3, -1.5, 0, 1.5, 3, 5};

  private static final double[] JUMP = {0};

  private final double[] points;
  private final double[] weights;

  private NormalRule(double[] points, double[] weights) {
    this.points = points;
    this.weights = weights;
  }

  /** Gauss–Legendre on −1 to 1. The factory of all rules would compute π to 40 digits first. */
  private static GaussIntegrator legendre(int n) {
    return new GaussIntegrator(new LegendreRuleFactory().getRule(n));
  }

  private static NormalRule points(GaussIntegrator of) {
    double[] points = new double[of.getNumberOfPoints()];
    double[] weights = new double[points.length];
    for (int i = 0; i < points.length; i++) {
      points[i] = of.getPoint(i);
      weights[i] = of.getWeight(i);
    }
    return new NormalRule(points, weights);
  }

  /** Gauss–Hermite, exact for polynomials of degree 2n − 1. */
  private static NormalRule hermite(int n) {
    GaussIntegrator physicists = new GaussIntegrator(new HermiteRuleFactory().getRule(n));
    double[] points = new double[n];
    double[] weights = new double[n];
    for (int i = 0; i < n; i++) {
      points[i] = Math.sqrt(2) * physicists.getPoint(i);
      weights[i] = physicists.getWeight(i) / Math.sqrt(Math.PI);
    }
    return new NormalRule(points, weights);
  }

  /** The rule for one variable whose logarithm has this standard deviation. */
  static NormalRule line(double sigma) {
    return chosen(sigma, LINE, () -> Wide.LINE);
  }

  /** The rule for one of two variables. */
  static NormalRule plane(double sigma) {
    return chosen(sigma, PLANE, () -> Wide.PLANE);
  }

  private static NormalRule chosen(double sigma, NormalRule narrow, Supplier<NormalRule> wide) {
    if (sigma == 0) {
      return CENTRE;
    }
    return sigma > WIDE ? wide.get() : narrow;
  }

  /** Gauss–Legendre on pieces that end wherever the function bends or jumps. */
  static NormalRule split(Bends bends) {
    double[] ends = bends.toEnds();
    int pieces = ends.length - 1;
    int n = PIECE.size();
    double[] points = new double[pieces * n];
    double[] weights = new double[pieces * n];
    for (int p = 0; p < pieces; p++) {
      double half = (ends[p + 1] - ends[p]) / 2;
      for (int i = 0; i < n; i++) {
        double z = ends[p] + half * (1 + PIECE.points[i]);
        points[p * n + i] = z;
        weights[p * n + i] = half * PIECE.weights[i] * StandardNormal.density(z);
      }
    }
    return new NormalRule(points, weights);
  }

  /** The integral of a smooth function times the density from one z to another. */
  static double integrate(DoubleUnaryOperator function, double from, double to) {
    double half = (to - from) / 2;
    double sum = 0;
    for (int i = 0; i < LongPiece.RULE.getNumberOfPoints(); i++) {
      double z = from + half * (1 + LongPiece.RULE.getPoint(i));
      sum += LongPiece.RULE.getWeight(i) * StandardNormal.density(z) * function.applyAsDouble(z);
    }
    return half * sum;
  }

  int size() {
    return points.length;
  }

  double point(int i) {
    return points[i];
  }

  double weight(int i) {
    return weights[i];
  }

  /** The expectation of a function of z. */
  double expectation(DoubleUnaryOperator function) {
    double sum = 0;
    for (int i = 0; i < points.length; i++) {
      sum += weights[i] * function.applyAsDouble(points[i]);
    }
    return sum;
  }

  /** Rules that few panels need and that take a while to find: made when first asked for. */
  private static final class Wide {

    private static final NormalRule LINE = hermite(48);
    private static final NormalRule PLANE = hermite(28);
  }

  /** As {@link Wide}, for one long piece. */
  private static final class LongPiece {

    private static final GaussIntegrator RULE = legendre(24);
  }

  /** The z at which a function changes fast. */
  static final class Bends {

    private double[] ends = Arrays.copyOf(BASE, 64);
    private int size = BASE.length;

    private Bends() {}

    private void add(double z) {
      if (size == ends.length) {
        ends = Arrays.copyOf(ends, 2 * size);
      }
      ends[size++] = z;
    }

    /** Nothing but the bends of the density. */
    static Bends none() {
      return new Bends();
    }

    /** A step at z that is this wide; a jump when the width is 0. */
    Bends with(double z, double width) {
      for (double bend : width > 0 ? BENDS : JUMP) {
        double at = z + bend * width;
        if (Math.abs(at) < -BASE[0]) {
          add(at);
        }
      }
      return this;
    }

    /** In order, each once. */
    private double[] toEnds() {
      Arrays.sort(ends, 0, size);
      int kept = 1;
      for (int i = 1; i < size; i++) {
        if (ends[i] != ends[kept - 1]) {
          ends[kept++] = ends[i];
        }
      }
      return Arrays.copyOf(ends, kept);
    }
  }
}
