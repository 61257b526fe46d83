package cistern.uncertainty;

import cistern.barrier.Hyperbola;

/**
 * A share of the serum concentration that is expected in CSF, as a monotone function of one other
 * quantity.
 */
sealed interface Curve {

  /** The share at a value of the quantity. */
  double at(double x);

  /** The quantity at which the curve takes a value; 0 when it only takes higher ones. */
  double inverse(double share);

  /** The slope of the curve. */
  double slopeAt(double x);

  /** Whether the share rises with the quantity. */
  default boolean isRising() {
    return true;
  }

  /**
   * A hyperbolic limit over the albumin quotient.
   *
   * @param limit the published curve
   */
  record Limit(Hyperbola limit) implements Curve {

    @Override
    public double at(double x) {
      return limit.at(x);
    }

    @Override
    public double inverse(double share) {
      double root = (share + limit.c()) / limit.slope();
      double squared = root * root - limit.bSquared();
      return root > 0 && squared > 0 ? Math.sqrt(squared) : 0;
    }

    @Override
    public double slopeAt(double x) {
      return limit.slope() * x / Math.sqrt(x * x + limit.bSquared());
    }
  }

  /**
   * A straight line.
   *
   * @param intercept the share at zero
   * @param slope positive, or 0 for a share that does not vary
   */
  record Line(double intercept, double slope) implements Curve {

    /** The whole of the serum concentration. */
    static final Line WHOLE = new Line(1, 0);

    @Override
    public double at(double x) {
      return intercept + slope * x;
    }

    @Override
    public double inverse(double share) {
      return Math.max(0, (share - intercept) / slope);
    }

    @Override
    public double slopeAt(double x) {
      return slope;
    }
  }

  /** The share of plasma in blood, 1 − haematocrit. */
  record Plasma() implements Curve {

    @Override
    public double at(double x) {
      return Math.max(0, 1 - x);
    }

    @Override
    public double inverse(double share) {
      return Math.max(0, 1 - share);
    }

    @Override
    public double slopeAt(double x) {
      return -1;
    }

    @Override
    public boolean isRising() {
      return false;
    }
  }
}
