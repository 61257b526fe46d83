package cistern.uncertainty;

import cistern.measurement.Interval;

/** The distribution that measurement error gives to a quantity. */
interface Spread {

  /** The share of all values under the lower end of an equal-tailed 95 % interval. */
  double TAIL = 0.025;

  /** The chance that the quantity lies over a value. */
  double chanceOver(double value);

  /** The value under which the quantity lies with a chance p, 0 to 1 exclusive. */
  double quantile(double p);

  /** The equal-tailed 95 % interval. */
  default Interval interval95() {
    return Interval.between(quantile(TAIL), quantile(1 - TAIL));
  }
}
