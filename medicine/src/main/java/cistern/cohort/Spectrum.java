package cistern.cohort;

import java.io.Serializable;
import java.util.Arrays;
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
    return new Spectrum(new TreeMap<>(Map.of(step(value), 1L)));
  }

  private static int step(double value) {
    return value > 0 ? (int) Math.floor(Math.log(value) / STEP) : NOTHING;
  }

  /** The values of a column, finite; NaN is none. */
  static Spectrum of(double[] column) {
    int[] steps = new int[column.length];
    int size = 0;
    for (double value : column) {
      if (!Double.isNaN(value)) {
        steps[size++] = step(value);
      }
    }
    Arrays.sort(steps, 0, size);
    SortedMap<Integer, Long> counts = new TreeMap<>();
    int from = 0;
    for (int i = 1; i <= size; i++) {
      if (i == size || steps[i] != steps[from]) {
        counts.put(steps[from], (long) i - from);
        from = i;
      }
    }
    return new Spectrum(counts);
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
