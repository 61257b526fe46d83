package cistern.bench;

import cistern.finding.Finding;
import cistern.uncertainty.Uncertainties;
import java.util.List;
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
import org.openjdk.jmh.infra.Blackhole;

/** Panels a second on one core: probabilities, intervals, and the same by 20,000 draws. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
public class UncertaintyBenchmark {

  private static final int PANELS = 256;

  private final Uncertainties uncertainties = Uncertainties.of(InventedPanels.FACTS);
  private final List<InventedPanels.Subject> whole = InventedPanels.whole(PANELS);
  private final List<InventedPanels.Subject> proteins = InventedPanels.proteins(PANELS);
  private final DrawnPanels drawn = new DrawnPanels(InventedPanels.FACTS, 1);
  private int next;

  /** The chance to lie above its limit, of every code of a whole panel. */
  @Benchmark
  @OperationsPerInvocation(PANELS)
  public void probabilitiesOfAllCodes(Blackhole sink) {
    for (InventedPanels.Subject subject : whole) {
      sink.consume(uncertainties.probabilities(subject.panel(), subject.findings()));
    }
  }

  /** Interval and probability of every code of a whole panel. */
  @Benchmark
  @OperationsPerInvocation(PANELS)
  public void intervalsOfAllCodes(Blackhole sink) {
    for (InventedPanels.Subject subject : whole) {
      for (Finding finding : uncertainties.measure(subject.panel(), subject.findings()).all()) {
        sink.consume(finding);
      }
    }
  }

  /** Interval and probability of the codes of a panel of ten proteins. */
  @Benchmark
  @OperationsPerInvocation(PANELS)
  public void intervalsOfProteins(Blackhole sink) {
    for (InventedPanels.Subject subject : proteins) {
      sink.consume(uncertainties.measure(subject.panel(), subject.findings()));
    }
  }

  /** The same codes of the same panels from 20,000 draws, sorted for the ends. */
  @Benchmark
  public void drawsOfProteins(Blackhole sink) {
    next = (next + 1) % PANELS;
    sink.consume(drawn.summarise(proteins.get(next).panel()));
  }
}
