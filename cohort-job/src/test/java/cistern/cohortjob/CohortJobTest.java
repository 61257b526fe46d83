package cistern.cohortjob;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command on the distributed engine, and the same on that of one machine beside it. */
class CohortJobTest {

  private static final Path ROOT = Path.of(System.getProperty("cistern.root", ".."));
  private static final Path TABLE = ROOT.resolve("examples/cohort.csv");
  private static final Pattern NUMBER = Pattern.compile("-?\\d+\\.\\d+(E-?\\d+)?");

  @TempDir Path folder;

  private record Run(int code, String err) {}

  private static Run job(String... words) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = CohortJob.run(new PrintStream(err, true, StandardCharsets.UTF_8), words);
    return new Run(code, err.toString(StandardCharsets.UTF_8));
  }

  /** The engine of one machine in a process of its own, as the launcher starts it. */
  private static void local(String... words) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "cistern.cli.Cistern"));
    command.addAll(List.of(words));
    Process process =
        new ProcessBuilder(command)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    assertThat(process.waitFor()).isZero();
  }

  private void assertAgree(Path table) throws IOException, InterruptedException {
    Path here = folder.resolve("here");
    Path there = folder.resolve("there");
    String groups = "--cases=ms";
    String others = "--controls=non-inflammatory";
    local("cohort", table.toString(), "--out", here.toString(), groups, others);
    Run run =
        job(
            "cohort",
            table.toString(),
            "--engine",
            "spark",
            "--out",
            there.toString(),
            groups,
            others);

    assertThat(run.code()).as(run.err()).isZero();
    for (String file : List.of("interpretations.csv", "dictionary.csv", "report.html")) {
      assertThat(there.resolve(file)).as(file).hasSameTextualContentAs(here.resolve(file));
    }
    assertNear(here.resolve("summary.json"), there.resolve("summary.json"));
  }

  /** The same text but for the last digits of fractions. */
  private static void assertNear(Path one, Path other) throws IOException {
    String here = Files.readString(one);
    String there = Files.readString(other);
    assertThat(NUMBER.matcher(there).replaceAll("#"))
        .isEqualTo(NUMBER.matcher(here).replaceAll("#"));
    Matcher a = NUMBER.matcher(here);
    Matcher b = NUMBER.matcher(there);
    while (a.find() && b.find()) {
      double value = Double.parseDouble(a.group());
      assertThat(Double.parseDouble(b.group())).isCloseTo(value, within(1e-12 * Math.abs(value)));
    }
  }

  @Test
  void cohort_fiveHundredInvented_isThatOfTheOtherEngine() throws Exception {
    assertAgree(TABLE);
  }

  @Test
  void cohort_generatedRows_areThoseOfTheOtherEngine() throws Exception {
    Path table = folder.resolve("generated.csv");
    Process generator =
        new ProcessBuilder(
                "python3", ROOT.resolve("examples/invent-cohort.py").toString(), "2000", "7")
            .redirectOutput(table.toFile())
            .start();
    assertThat(generator.waitFor()).isZero();

    assertAgree(table);
  }

  @Test
  void cohort_numbersAlone_areThoseOfTheOtherEngine() throws Exception {
    Path here = folder.resolve("here");
    Path there = folder.resolve("there");
    Path again = folder.resolve("again");
    String table = TABLE.toString();
    local("cohort", table, "--numbers", "--uncertainty", "--out", here.toString());
    Path parquet = folder.resolve("table.parquet");
    try (Engine engine = new Engine(1, 1)) {
      engine
          .spark()
          .read()
          .option("header", true)
          .option("inferSchema", true)
          .csv(table)
          .write()
          .parquet(parquet.toString());
    }
    for (Run run :
        List.of(
            job(table, "--numbers", "--uncertainty", "--out", there.toString()),
            job(parquet.toString(), "--numbers", "--uncertainty", "--out", again.toString()))) {
      assertThat(run.code()).as(run.err()).isZero();
      assertThat(run.err()).contains("Computed 500 in");
    }
    assertNear(here.resolve("summary.json"), there.resolve("summary.json"));
    assertNear(here.resolve("summary.json"), again.resolve("summary.json"));
  }

  @Test
  void cohort_numbersOfATableThatHoldsNone_areRefused() throws IOException {
    Path out = folder.resolve("out");
    Path empty = Files.writeString(folder.resolve("empty.csv"), "id,albumin.csf\na,200\n");
    Path bad =
        Files.writeString(
            folder.resolve("bad.csv"), "albumin.csf,albumin.serum\nmany,41000\n200,41000\n");

    assertThat(job(empty.toString(), "--numbers", "--out", out.toString()))
        .matches(run -> run.code() == 3 && run.err().contains("no albumin.serum"));
    assertThat(
            job(folder.resolve("no.csv").toString(), "--numbers", "--out", out.toString()).code())
        .isEqualTo(3);
    assertThat(out).doesNotExist();
    assertThat(job(bad.toString(), "--numbers", "--out", out.toString()))
        .matches(run -> run.code() == 3 && run.err().contains("1 rows hold what is no number"));
    assertThat(Files.readString(out.resolve("summary.json"))).contains("\"rows\" : 1");
  }

  @Test
  void cohort_exchangedColumns_computesNothing() throws IOException {
    Path table = folder.resolve("table.csv");
    List<String> lines = new ArrayList<>(Files.readAllLines(TABLE).subList(0, 41));
    lines.set(
        0,
        lines
            .getFirst()
            .replace("albumin.csf", "#")
            .replace("albumin.serum", "albumin.csf")
            .replace("#", "albumin.serum"));
    Files.write(table, lines);
    Run run = job(table.toString(), "--out", folder.resolve("out").toString());

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("albumin.csf", "Nothing was computed");
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(table);
    }
  }

  @Test
  void cohort_whatIsNotThere_isSaid() throws IOException {
    String out = folder.resolve("out").toString();
    Path policy = Files.writeString(folder.resolve("policy.json"), "{\"policy\": 1}");

    assertThat(job(folder.resolve("missing.csv").toString(), "--out", out))
        .matches(run -> run.code() == 3 && run.err().contains("cannot be read"));
    assertThat(job(TABLE.toString(), "--out", out, "--policy", policy.toString()))
        .matches(run -> run.code() == 3 && run.err().contains("policy.json"));
    assertThat(job(TABLE.toString(), "--out", out, "--mapping", policy.toString()).code())
        .isEqualTo(3);
    assertThat(job(TABLE.toString(), "--out", out, "--policy", out).code()).isEqualTo(3);
    assertThat(job(TABLE.toString(), "--out", out, "--engine", "steam").code()).isEqualTo(2);
    assertThat(job(TABLE.toString(), "--out", out, "--zone", "Moon").code()).isEqualTo(2);
    assertThat(job("--help").code()).isZero();
    assertThat(folder.resolve("out")).doesNotExist();
  }
}
