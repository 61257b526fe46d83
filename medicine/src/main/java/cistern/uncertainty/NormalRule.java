package cistern.uncertainty;

import java.util.Arrays;
import java.util.TreeSet;
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
  private static final GaussIntegrator PIECE = legendre(4);

  /** Where the density itself bends. */
  private static final double[] BASE = {-8, -5, -3, -2, -1, 0, 1, 2, 3, 5, 8};

  /** Where a normal distribution function bends, in its own standard deviations. */
  private static final double[] BENDS = {-5, -3, -1.5, 0, 1.5, 3, 5};

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
    int n = PIECE.getNumberOfPoints();
    double[] points = new double[pieces * n];
    double[] weights = new double[pieces * n];
    for (int p = 0; p < pieces; p++) {
      double half = (ends[p + 1] - ends[p]) / 2;
      for (int i = 0; i < n; i++) {
        double z = ends[p] + half * (1 + PIECE.getPoint(i));
        points[p * n + i] = z;
        weights[p * n + i] = half * PIECE.getWeight(i) * StandardNormal.density(z);
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

    private final TreeSet<Double> ends = new TreeSet<>();

    private Bends(double from, double to) {
      Arrays.stream(BASE).filter(z -> z > from && z < to).forEach(ends::add);
      ends.add(Math.clamp(from, BASE[0], -BASE[0]));
      ends.add(Math.clamp(to, BASE[0], -BASE[0]));
    }

    /** Nothing but the bends of the density, from one z to another. */
    static Bends between(double from, double to) {
      return new Bends(from, to);
    }

    /** Nothing but the bends of the density. */
    static Bends none() {
      return new Bends(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** A step at z that is this wide; a jump when the width is 0. */
    Bends with(double z, double width) {
      double first = ends.first();
      double last = ends.last();
      for (double bend : width > 0 ? BENDS : new double[] {0}) {
        double at = z + bend * width;
        if (at > first && at < last) {
          ends.add(at);
        }
      }
      return this;
    }

    private double[] toEnds() {
      return ends.stream().mapToDouble(Double::doubleValue).toArray();
    }
  }
}
