package cistern.gel.pairing;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How likely each count is. Of independent bands with their own chances it is the Poisson-binomial
 * distribution.
 *
 * @param chances entry k is the chance of k bands
 */
public record CountDistribution(List<Double> chances) {
  /** Copies the chances. */
  public CountDistribution {
    chances = List.copyOf(chances);
  }

  /** The distribution of how many of independent events happen. */
  public static CountDistribution of(double[] events) {
    double[] p = new double[events.length + 1];
    p[0] = 1;
    for (int n = 0; n < events.length; n++) {
      for (int k = n + 1; k > 0; k--) {
        p[k] = p[k] * (1 - events[n]) + p[k - 1] * events[n];
      }
      p[0] *= 1 - events[n];
    }
    return new CountDistribution(Arrays.stream(p).boxed().toList());
  }

  /** The mean of distributions, each with its weight; the weights sum to 1. */
  static CountDistribution of(List<CountDistribution> parts, double[] weights) {
    int longest = parts.stream().mapToInt(c -> c.chances.size()).max().orElse(1);
    double[] p = new double[longest];
    for (int i = 0; i < weights.length; i++) {
      List<Double> part = parts.get(i).chances;
      for (int k = 0; k < part.size(); k++) {
        p[k] += weights[i] * part.get(k);
      }
    }
    return new CountDistribution(Arrays.stream(p).boxed().toList());
  }

  /** The least count that is reached with a chance of one half. */
  public int median() {
    double sum = 0;
    for (int k = 0; k < chances.size(); k++) {
      sum += chances.get(k);
      if (sum >= 0.5) {
        return k;
      }
    }
    return chances.size() - 1;
  }

  /** The chance of at least so many. */
  public double atLeast(int count) {
    double sum = IntStream.range(count, chances.size()).mapToDouble(chances::get).sum();
    return Math.clamp(sum, 0, 1);
  }
}
