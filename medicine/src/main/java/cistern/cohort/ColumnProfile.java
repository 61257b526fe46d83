package cistern.cohort;

import cistern.fact.Facts;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.panel.Panel;
import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How the values of each column of a cohort lie, before anything is computed from them. Parts merge
 * in any order.
 *
 * @param people how many rows
 * @param values of each sample, by its name in files
 * @param implausible how many of them lie outside the plausible range
 * @param ages where the ages lie
 * @param oddSexes how many words for the sex hold a digit
 * @param sexes how many rows have one
 */
public record ColumnProfile(
    long people,
    SortedMap<String, Spectrum> values,
    SortedMap<String, Long> implausible,
    Spectrum ages,
    long oddSexes,
    long sexes)
    implements Serializable {

  /** No row yet. */
  public static final ColumnProfile NONE =
      new ColumnProfile(
          0, Collections.emptySortedMap(), Collections.emptySortedMap(), Spectrum.NONE, 0, 0);

  /** One row. */
  public static ColumnProfile of(Panel panel, Facts facts) {
    SortedMap<String, Spectrum> values = new TreeMap<>();
    SortedMap<String, Long> implausible = new TreeMap<>();
    for (Map.Entry<Sample, Measurement> result : panel.results().entrySet()) {
      String code = result.getKey().code();
      Interval value = result.getValue().value();
      if (value.isExact()) {
        values.put(code, Spectrum.of(value.exactly()));
        implausible.put(code, isPlausible(code, value.exactly(), facts) ? 0L : 1L);
      }
    }
    boolean hasSex = panel.person().sex().isPresent();
    boolean isOdd = panel.person().sex().filter(s -> s.matches(".*\\d.*")).isPresent();
    return new ColumnProfile(
        1,
        values,
        implausible,
        panel.person().ageYears().isPresent()
            ? Spectrum.of(panel.person().ageYears().getAsDouble())
            : Spectrum.NONE,
        isOdd ? 1 : 0,
        hasSex ? 1 : 0);
  }

  /** Columns of one length, by sample; NaN where there is no value. */
  public static ColumnProfile of(Map<Sample, double[]> columns, Facts facts) {
    SortedMap<String, Spectrum> values = new TreeMap<>();
    SortedMap<String, Long> implausible = new TreeMap<>();
    long people = 0;
    for (Map.Entry<Sample, double[]> column : columns.entrySet()) {
      String code = column.getKey().code();
      people = column.getValue().length;
      Spectrum spectrum = Spectrum.of(column.getValue());
      if (spectrum.size() > 0) {
        values.put(code, spectrum);
        implausible.put(code, implausible(code, column.getValue(), facts));
      }
    }
    return new ColumnProfile(people, values, implausible, Spectrum.NONE, 0, 0);
  }

  private static long implausible(String code, double[] column, Facts facts) {
    String key = "plausible." + code;
    if (facts.find(key + ".lower").isEmpty()) {
      return 0;
    }
    double lower = facts.number(key + ".lower");
    double upper = facts.number(key + ".upper");
    long implausible = 0;
    for (double value : column) {
      implausible += value < lower || value > upper ? 1 : 0;
    }
    return implausible;
  }

  private static boolean isPlausible(String code, double value, Facts facts) {
    String key = "plausible." + code;
    return facts.find(key + ".lower").isEmpty()
        || (value >= facts.number(key + ".lower") && value <= facts.number(key + ".upper"));
  }

  /** The rows of both. */
  public ColumnProfile merge(ColumnProfile other) {
    SortedMap<String, Spectrum> all = new TreeMap<>(values);
    other.values.forEach((code, spectrum) -> all.merge(code, spectrum, Spectrum::merge));
    SortedMap<String, Long> odd = new TreeMap<>(implausible);
    other.implausible.forEach((code, count) -> odd.merge(code, count, Long::sum));
    return new ColumnProfile(
        people + other.people,
        all,
        odd,
        ages.merge(other.ages),
        oddSexes + other.oddSexes,
        sexes + other.sexes);
  }
}
