package cistern.exchange.intake;

import cistern.cohort.ColumnProfile;
import cistern.cohort.NumberSummary;
import cistern.cohort.PanelNumbers;
import cistern.cohort.QuotientColumns;
import cistern.exchange.json.InputProblem;
import cistern.exchange.table.NumberTable;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.io.Serializable;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * What a cohort's numbers are made of, on whatever machine: rows of a table of concentrations to
 * sums, by the columns of the kernel.
 */
public final class CohortNumbers {

  private static final int MOST_SAID = 1_000;
  private static final Sample CSF = Sample.csf(Analyte.ALBUMIN);
  private static final Sample SERUM = Sample.serum(Analyte.ALBUMIN);

  private final Facts facts;
  private final List<Sample> samples;
  private final PanelNumbers.Kernel kernel;
  private final boolean hasChances;

  private CohortNumbers(Facts facts, boolean hasChances) {
    this.facts = facts;
    this.samples = QuotientColumns.of(facts).needed();
    this.kernel = PanelNumbers.Kernel.of(facts);
    this.hasChances = hasChances;
  }

  /**
   * The numbers under some facts.
   *
   * @param hasChances whether the chance to lie above a limit is computed as well
   */
  public static CohortNumbers of(Facts facts, boolean hasChances) {
    return new CohortNumbers(facts, hasChances);
  }

  /** The table under a line of headings. */
  public NumberTable table(String heading) {
    return NumberTable.of(heading, samples);
  }

  /** Whether a table has what every number needs: albumin of both fluids, by name. */
  public static boolean isEnough(NumberTable table) {
    return table.found().containsAll(List.of(CSF.code(), SERUM.code()));
  }

  /**
   * What some rows give.
   *
   * @param profile how their columns lie
   * @param summary of their numbers
   * @param refused how many are left out
   * @param problems of those, the first thousand
   */
  public record Part(
      ColumnProfile profile, NumberSummary summary, long refused, List<InputProblem> problems)
      implements Serializable {

    /** No row. */
    public static final Part NONE = new Part(ColumnProfile.NONE, NumberSummary.NONE, 0, List.of());

    /** Copies the list. */
    public Part {
      problems = List.copyOf(problems);
    }

    /** Both together. */
    public Part merge(Part other) {
      return new Part(
          profile.merge(other.profile),
          summary.merge(other.summary),
          refused + other.refused,
          Stream.concat(problems.stream(), other.problems.stream()).limit(MOST_SAID).toList());
    }
  }

  /**
   * What some rows give.
   *
   * @param table that they stand in
   * @param lines a row each
   * @param rowsBefore how many lines of the file stand before them
   */
  public Part read(NumberTable table, List<String> lines, long rowsBefore) {
    NumberTable.Columns read = table.read(lines, rowsBefore);
    Map<Sample, double[]> concentrations = new HashMap<>();
    samples.forEach(sample -> concentrations.put(sample, read.columns().get(sample.code())));
    ColumnProfile profile = ColumnProfile.of(concentrations, facts);
    concentrations.replaceAll(CohortNumbers::dividing);
    NumberSummary summary = NumberSummary.of(kernel.compute(concentrations, hasChances));
    return new Part(profile, summary, read.refused(), read.problems());
  }

  /** A zero that would divide is as good as not measured. */
  private static double[] dividing(Sample sample, double[] column) {
    return sample.in() == Compartment.CSF && !sample.equals(CSF)
        ? column
        : DoubleStream.of(column).map(value -> value == 0 ? Double.NaN : value).toArray();
  }
}
