package cistern.architecture.broken.inside;

import java.time.Clock;
import java.time.Instant;
import java.util.Random;

/** The same with the clock and the seed passed in: allowed. */
final class Tidy {

  private static final double[] NODES = {0.5};

  private Tidy() {}

  static Instant clock(Clock clock) {
    return Instant.now(clock);
  }

  static double chance(long seed) {
    return new Random(seed).nextDouble() * NODES[0];
  }
}
