package cistern.cohort;

import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How many values of a cohort lie where, in steps of one per cent of the value: counts only, so
 * that parts merge to the same in any order, in little memory. A quantile read from it is off by at
 * most half a step.
 *
 * @param counts by step; values of 0 and less stand in the lowest
 */
public record Spectrum(SortedMap<Integer, Long> counts) implements Serializable {

  /** No value yet. */
  public static final Spectrum NONE = new Spectrum(Collections.emptySortedMap());

  private static final double STEP = 0.01;
  private static final int NOTHING = Integer.MIN_VALUE;

  /** Copies the counts. */
  public Spectrum {
    counts = Collections.unmodifiableSortedMap(new TreeMap<>(counts));
  }

  /** One value, finite. */
  public static Spectrum of(double value) {
    int step = value > 0 ? (int) Math.floor(Math.log(value) / STEP) : NOTHING;
    return new Spectrum(new TreeMap<>(Map.of(step, 1L)));
  }

  /** The values of both. */
  public Spectrum merge(Spectrum other) {
    SortedMap<Integer, Long> merged = new TreeMap<>(counts);
    other.counts.forEach((step, count) -> merged.merge(step, count, Long::sum));
    return new Spectrum(merged);
  }

  /** How many values there are. */
  public long size() {
    return counts.values().stream().mapToLong(Long::longValue).sum();
  }

  /**
   * The value under which a share of the values lies, to half a per cent of itself; empty without a
   * value.
   *
   * @param share between 0 and 1
   */
  public OptionalDouble quantile(double share) {
    double rank = share * size();
    long under = 0;
    for (Map.Entry<Integer, Long> step : counts.entrySet()) {
      under += step.getValue();
      if (under >= rank) {
        return OptionalDouble.of(
            step.getKey() == NOTHING ? 0 : Math.exp((step.getKey() + 0.5) * STEP));
      }
    }
    return OptionalDouble.empty();
  }
}
