package cistern.cohort;

import cistern.finding.FindingCode;
import java.io.Serializable;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BinaryOperator;

/**
 * How the numbers of a cohort lie, in parts that merge in any order and grouping.
 *
 * @param rows how many panels
 * @param values how each quantity lies
 * @param over how many values lie above their limit, of those that have one; of a fraction: above 0
 * @param chances how the chances to lie above the limit lie
 */
public record NumberSummary(
    long rows,
    SortedMap<FindingCode, Distribution> values,
    SortedMap<FindingCode, Long> over,
    SortedMap<FindingCode, Moments> chances)
    implements Serializable {

  /** Nobody. */
  public static final NumberSummary NONE =
      new NumberSummary(
          0,
          Collections.emptySortedMap(),
          Collections.emptySortedMap(),
          Collections.emptySortedMap());

  /** What some panels show. */
  public static NumberSummary of(PanelNumbers numbers) {
    SortedMap<FindingCode, Distribution> values = new TreeMap<>();
    SortedMap<FindingCode, Long> over = new TreeMap<>();
    for (FindingCode code : numbers.computed().codes()) {
      double[] column = numbers.computed().value(code);
      values.put(code, Distribution.of(column));
      if (code.kind() == FindingCode.Kind.FRACTION) {
        long above = 0;
        for (double value : column) {
          above += value > 0 ? 1 : 0;
        }
        over.put(code, above);
      }
    }
    SortedMap<FindingCode, Moments> chances = new TreeMap<>();
    numbers.chances().forEach((code, column) -> chances.put(code, Moments.of(column)));
    return new NumberSummary(numbers.computed().rows(), values, over, chances);
  }

  /** Both together. */
  public NumberSummary merge(NumberSummary other) {
    return new NumberSummary(
        rows + other.rows,
        merged(values, other.values, Distribution::merge),
        merged(over, other.over, Long::sum),
        merged(chances, other.chances, Moments::merge));
  }

  private static <V> SortedMap<FindingCode, V> merged(
      SortedMap<FindingCode, V> a, SortedMap<FindingCode, V> b, BinaryOperator<V> both) {
    SortedMap<FindingCode, V> merged = new TreeMap<>(a);
    b.forEach((code, value) -> merged.merge(code, value, both));
    return merged;
  }
}
