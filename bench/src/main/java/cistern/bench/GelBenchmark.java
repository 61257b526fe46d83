package cistern.bench;

import cistern.gel.GelFacts;
import cistern.gel.GelReader;
import cistern.gel.image.Picture;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The whole reading of a decoded gel of 1500 by 1000 pixels on one core. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class GelBenchmark {

  private final Picture picture = InventedGel.picture();
  private final GelReader reader = new GelReader(GelFacts.standard());

  /** Membrane, lanes, bands, pairs. */
  @Benchmark
  public GelReading read() {
    return reader.read(picture, "invented", LanePlan.NONE);
  }
}
