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
    CountDistribution all = new CountDistribution(List.of(1.0));
    for (double event : events) {
      all = all.with(event);
    }
    return all;
  }

  /** The same with one more event of a chance, independent of the others. */
  CountDistribution with(double event) {
    double[] p = new double[chances.size() + 1];
    for (int k = 0; k < chances.size(); k++) {
      p[k] += chances.get(k) * (1 - event);
      p[k + 1] += chances.get(k) * event;
    }
    return new CountDistribution(Arrays.stream(p).boxed().toList());
  }

  /**
   * The same without one event of a chance: the other way round. Of a distribution that never held
   * that event what is left is as near to it as chances can be.
   */
  CountDistribution without(double event) {
    int n = chances.size() - 1;
    double[] p = new double[Math.max(1, n)];
    boolean isLikely = event > 1 - event;
    for (int i = 0; i < n; i++) {
      int k = isLikely ? n - 1 - i : i;
      double beside = isLikely ? at(p, k + 1) * (1 - event) : at(p, k - 1) * event;
      double here = chances.get(isLikely ? k + 1 : k) - beside;
      p[k] = Math.max(0, here) / Math.max(event, 1 - event);
    }
    double sum = Arrays.stream(p).sum();
    return sum > 0
        ? new CountDistribution(Arrays.stream(p).map(c -> c / sum).boxed().toList())
        : new CountDistribution(List.of(1.0));
  }

  private static double at(double[] p, int k) {
    return k < 0 || k >= p.length ? 0 : p[k];
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
