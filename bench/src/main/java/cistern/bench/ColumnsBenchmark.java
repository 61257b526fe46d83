package cistern.bench;

import cistern.cohort.QuotientColumns;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Panels a second on one core, without uncertainty: a million rows of ten concentrations. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(
    value = 1,
    jvmArgsAppend = {"-XX:+UseSerialGC", "-Xmx2g"})
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ColumnsBenchmark {

  private static final int ROWS = 1_000_000;

  private final QuotientColumns columns = QuotientColumns.of(InventedPanels.FACTS);
  private final QuotientColumns.Computed computed = columns.columns(ROWS);
  private final Map<Sample, double[]> concentrations = invented(columns);

  private static Map<Sample, double[]> invented(QuotientColumns of) {
    Random random = new Random(1);
    Map<Sample, double[]> all = new HashMap<>();
    for (Sample sample : of.needed()) {
      double[] column = new double[ROWS];
      double centre = sample.in() == Compartment.CSF ? 40 : 10_000;
      Arrays.setAll(column, i -> centre * Math.exp(random.nextGaussian() / 2));
      all.put(sample, column);
    }
    return all;
  }

  /** 18 quantities and 4 limits of every row into columns that are there already. */
  @Benchmark
  @OperationsPerInvocation(ROWS)
  public QuotientColumns.Computed inPlace() {
    columns.interpret(concentrations, computed);
    return computed;
  }

  /** The same into new columns, as an expression over arrays would. */
  @Benchmark
  @OperationsPerInvocation(ROWS)
  public QuotientColumns.Computed intoNewColumns() {
    return columns.interpret(concentrations);
  }
}
