package cistern.gel.synthetic;

import java.util.SplittableRandom;

/** Seeded draws. */
final class Draw {
  private final SplittableRandom random;

  Draw(long seed) {
    random = new SplittableRandom(seed);
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  int count(int low, int highIncluded) {
    return random.nextInt(low, highIncluded + 1);
  }

  double normal() {
    return random.nextGaussian();
  }

  boolean chance(double p) {
    return random.nextDouble() < p;
  }

  double logNormal(double median, double spread) {
    return median * Math.exp(spread * normal());
  }
}
