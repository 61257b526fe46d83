package cistern.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import com.code_intelligence.jazzer.Jazzer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Ten minutes of coverage-guided fuzzing of each reader, in a Java of its own. */
@Tag("long")
class FuzzingStudyTest {

  /** {@code -Dfuzz.seconds=} makes it shorter. */
  private static final int SECONDS = Integer.getInteger("fuzz.seconds", 600);

  private static final Pattern RUNS = Pattern.compile("number_of_executed_units: (\\d+)");

  @TempDir private Path folder;

  @ParameterizedTest
  @EnumSource(FuzzedReader.class)
  void read_tenMinutesOfInputs_findsNoFault(FuzzedReader reader)
      throws IOException, InterruptedException {
    Path log = folder.resolve("fuzzer.log");
    Process fuzzer =
        new ProcessBuilder(command(reader))
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    int code = fuzzer.waitFor();
    String said = Files.readString(log);
    Matcher runs = RUNS.matcher(said);
    assertThat(runs.find()).as(said).isTrue();
    // The input that does harm stands in the log as Base64; keep it in the corpus.
    assertThat(code).as(said).isZero();
    OutsideCheck.of(
            "Inputs that the fuzzer made for the reader of " + reader.word(),
            "Jazzer 0.30.0, coverage-guided, " + SECONDS + " s",
            "no fault, none over 100 s, none silent")
        .toTable(runs.group(1) + " executions without a finding");
  }

  private List<String> command(FuzzedReader reader) throws IOException {
    String classes =
        Optional.ofNullable(System.getProperty("surefire.test.class.path"))
            .orElseGet(() -> System.getProperty("java.class.path", ""));
    return List.of(
        Path.of(System.getProperty("java.home", ""), "bin", "java").toString(),
        "-Xmx1500m",
        "-XX:+UseSerialGC",
        "-XX:+EnableDynamicAgentLoading",
        "-cp",
        classes,
        Jazzer.class.getName(),
        "--target_class=" + reader.target().getName(),
        "--instrumentation_includes=cistern.exchange.**",
        "--custom_hook_includes=cistern.exchange.**",
        "-max_total_time=" + SECONDS,
        "-max_len=20000",
        "-timeout=100",
        "-print_final_stats=1",
        Files.createDirectory(folder.resolve("found")).toString(),
        reader.corpus().toString());
  }
}
