package cistern.cohort;

import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import java.io.Serial;
import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The values of people of one kind at a site, one column a finding. Columns of numbers, not people:
 * a million of them take some dozen megabytes.
 */
final class SiteGroup implements Serializable {

  @Serial private static final long serialVersionUID = 1L;

  private final EnumMap<FindingCode, Column> columns = new EnumMap<>(FindingCode.class);

  /** Nobody yet, for some findings. */
  SiteGroup(List<FindingCode> codes) {
    codes.forEach(code -> columns.put(code, new Column()));
  }

  /** Adds one person. */
  void add(CohortMember member) {
    columns.forEach(
        (code, column) -> {
          Double value = member.values().get(code);
          if (value != null) {
            column.add(value, member.ageYears().orElse(Double.NaN));
          }
          Verdict verdict = member.verdicts().getOrDefault(code, Verdict.UNDETERMINED);
          if (verdict.isDecided()) {
            column.judged++;
            column.above += verdict == Verdict.ABOVE ? 1 : 0;
          }
        });
  }

  /** Adds the people of another part. */
  void addAll(SiteGroup other) {
    columns.forEach((code, column) -> column.addAll(other.column(code)));
  }

  /** The values of a finding, rising, so that the order in which people came does not matter. */
  double[] values(FindingCode code) {
    Column column = column(code);
    double[] values = Arrays.copyOf(column.values, column.size);
    Arrays.sort(values);
    return values;
  }

  /** Ages and values of those whose age is known, in the order of age and value. */
  double[][] aged(FindingCode code) {
    Column column = column(code);
    int[] order =
        IntStream.range(0, column.size)
            .filter(i -> !Double.isNaN(column.ages[i]))
            .boxed()
            .sorted(
                (i, j) ->
                    column.ages[i] == column.ages[j]
                        ? Double.compare(column.values[i], column.values[j])
                        : Double.compare(column.ages[i], column.ages[j]))
            .mapToInt(Integer::intValue)
            .toArray();
    return new double[][] {
      Arrays.stream(order).mapToDouble(i -> column.ages[i]).toArray(),
      Arrays.stream(order).mapToDouble(i -> column.values[i]).toArray()
    };
  }

  /** How many are called above by the limit in force, of those who are called anything. */
  Tally above(FindingCode code) {
    Column column = column(code);
    return new Tally(column.above, column.judged - column.above, 0);
  }

  private Column column(FindingCode code) {
    return Optional.ofNullable(columns.get(code)).orElseThrow();
  }

  private static final class Column implements Serializable {

    @Serial private static final long serialVersionUID = 1L;

    private static final int FIRST = 64;

    private double[] values = new double[FIRST];
    private double[] ages = new double[FIRST];
    private int size;
    private long judged;
    private long above;

    private void addAll(Column other) {
      for (int i = 0; i < other.size; i++) {
        add(other.values[i], other.ages[i]);
      }
      judged += other.judged;
      above += other.above;
    }

    private void add(double value, double age) {
      if (size == values.length) {
        values = Arrays.copyOf(values, 2 * size);
        ages = Arrays.copyOf(ages, 2 * size);
      }
      values[size] = value;
      ages[size] = age;
      size++;
    }
  }
}
