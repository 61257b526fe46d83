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
  /** How far: bands that are seen one by one say more than a count at one glance. */
  private static final double DRAWN = 0.25;

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

  /**
   * This distribution drawn a part of the way to what is said of the small counts at once.
   *
   * @param said the chance of 0, of 1, and so on; the last entry is "so many or more"
   */
  CountDistribution drawnTo(double[] said) {
    int last = said.length - 1;
    double[] p = new double[Math.max(chances.size(), said.length)];
    for (int k = 0; k < chances.size(); k++) {
      p[k] = chances.get(k);
    }
    double many = 0;
    for (int k = last; k < p.length; k++) {
      many += p[k];
    }
    double wanted = (1 - DRAWN) * many + DRAWN * said[last];
    for (int k = 0; k < last; k++) {
      p[k] = (1 - DRAWN) * p[k] + DRAWN * said[k];
    }
    for (int k = last; k < p.length; k++) {
      double share = many > 1e-6 ? p[k] / many : 0;
      p[k] = wanted * (many > 1e-6 ? share : k == last ? 1 : 0);
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
