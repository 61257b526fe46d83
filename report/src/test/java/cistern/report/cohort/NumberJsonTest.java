package cistern.report.cohort;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.cohort.NumberSummary;
import cistern.cohort.PanelNumbers;
import cistern.cohort.QuotientColumns;
import cistern.fact.Facts;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NumberJsonTest {

  @TempDir Path folder;

  @Test
  void write_threePanels_leavesTheSummaryAlone() throws IOException {
    Facts facts = Facts.standard();
    Map<Sample, double[]> concentrations = new HashMap<>();
    for (Sample sample : QuotientColumns.of(facts).needed()) {
      boolean isCsf = sample.in() == Compartment.CSF;
      concentrations.put(
          sample, isCsf ? new double[] {10, 20, Double.NaN} : new double[] {1_000, 1_000, 1_000});
    }
    NumberSummary summary =
        NumberSummary.of(PanelNumbers.Kernel.of(facts).compute(concentrations, true));
    NumberJson.write(folder, new CohortReport.Made("it", "facts", Optional.empty()), summary, 2);

    // 10 and 20 of 1,000 are 0.01 and 0.02
    assertThat(Files.readString(folder.resolve("summary.json")))
        .contains("\"rows\" : 3", "\"refused\" : 2", "\"values\" : 2", "\"mean\" : 0.015")
        .contains("\"aboveLimit\"", "\"expectedAboveLimit\"");
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).hasSize(1);
    }
  }

  @Test
  void progress_ofAShare_saysTheTimeLeft() {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    long[] now = {0};
    Progress progress =
        new Progress(new PrintStream(err, true, StandardCharsets.UTF_8), () -> now[0], "Read");
    now[0] = 2_000_000_000L;
    progress.say(1_000, 0.25);
    progress.finish(1_000);

    // a quarter in 2 s: three quarters take 6 s
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("Read 1,000, 25 % of the input, 500 a second, 6 s left")
        .contains("Read 1,000 in 2 s, 500 a second");
  }
}
