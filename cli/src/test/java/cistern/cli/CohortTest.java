package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.report.cohort.CohortFolder;
import cistern.report.cohort.Progress;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Many work-ups at once, as a department asks; the table is invented (examples/invent-cohort.py).
 */
class CohortTest {

  private static final Path TABLE = Path.of("../examples/cohort.csv");

  @TempDir Path folder;

  private static Run cohort(Path input, Path out, String... more) {
    List<String> words =
        Stream.concat(
                Stream.of("cohort", input.toString(), "--out", out.toString()), Stream.of(more))
            .toList();
    return Run.of(words.toArray(String[]::new));
  }

  /** The first rows of the table, with other headings in place of some. */
  private Path table(int rows, String... exchanged) throws IOException {
    List<String> lines = Files.readAllLines(TABLE).subList(0, rows + 1);
    String head =
        Stream.of(lines.getFirst().split(",", -1))
            .map(name -> exchanged(name, exchanged))
            .collect(Collectors.joining(","));
    Path file = folder.resolve("table.csv");
    Files.writeString(file, head + "\n" + String.join("\n", lines.subList(1, lines.size())) + "\n");
    return file;
  }

  private static String exchanged(String name, String... pair) {
    if (pair.length == 2 && name.equals(pair[0])) {
      return pair[1];
    }
    return pair.length == 2 && name.equals(pair[1]) ? pair[0] : name;
  }

  @Test
  void cohort_inventedTable_writesWhatADepartmentPresents() throws IOException {
    Path out = folder.resolve("out");
    Run run = cohort(table(140), out, "--controls", "non-inflammatory", "--cases", "ms");

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).containsPattern("Interpreted 140 in \\d+ s, [\\d,]+ a second");
    try (Stream<Path> files = Files.list(out)) {
      assertThat(files.map(f -> f.getFileName().toString()).sorted())
          .containsExactly(
              "dictionary.csv",
              "interpretations.csv",
              "proposed-policy.json",
              "report.html",
              "report.pdf",
              "summary.json");
    }
    assertThat(Files.readString(out.resolve("summary.json")))
        .contains("\"cohort\" : 1", "\"punctures\" : 140", "\"invented\" : true")
        .contains("\"method\" : \"robust\"", "\"calibration\"", "\"readings\"");
    assertThat(Files.readString(out.resolve("report.html")))
        .contains("Cohort of 140 punctures", "are invented", "Month by month", "with κ");
    assertThat(Files.readAllBytes(out.resolve("report.pdf"))).startsWith('%', 'P', 'D', 'F');
    List<String> rows = Files.readAllLines(out.resolve("interpretations.csv"));
    int columns = rows.getFirst().split(",", -1).length;
    assertThat(rows).hasSize(141).allMatch(row -> row.split(",", -1).length == columns);
    assertThat(Files.readAllLines(out.resolve("dictionary.csv"))).hasSize(columns + 1);
    // an unsigned proposal is no policy
    Run unsigned = Run.of("facts", "--policy", out.resolve("proposed-policy.json").toString());
    assertThat(unsigned.code()).isEqualTo(3);
  }

  @Test
  void cohort_exchangedColumns_computesNothing() throws IOException {
    for (List<String> pair :
        List.of(
            List.of("albumin.csf", "albumin.serum"),
            List.of("albumin.serum", "igg.serum"),
            List.of("igg.csf", "albumin.csf"),
            List.of("glucose.csf", "lactate.csf"),
            List.of("ageYears", "igg.serum"))) {
      Path out = folder.resolve("out");
      Run run = cohort(table(60, pair.getFirst(), pair.getLast()), out);

      assertThat(run.code()).as(pair.toString()).isEqualTo(3);
      assertThat(run.err()).contains(pair.getFirst(), "Nothing was computed");
      assertThat(out).doesNotExist();
    }
    Run confirmed =
        cohort(
            table(60, "glucose.csf", "lactate.csf"),
            folder.resolve("confirmed"),
            "--columns-confirmed-by",
            "Dr Example");
    assertThat(confirmed.code()).isZero();
    assertThat(Files.readString(folder.resolve("confirmed/summary.json")))
        .contains("\"columnsConfirmedBy\" : \"Dr Example\"");
  }

  @Test
  void cohort_fewPeople_refusesLimitsAndPerformance() throws IOException {
    Path out = folder.resolve("out");
    Run run = cohort(table(25), out, "--controls", "non-inflammatory,healthy", "--cases", "ms");

    assertThat(run.code()).isZero();
    assertThat(run.err())
        .containsPattern("nobody has the final diagnosis healthy; recorded are .*ms, .*");
    assertThat(Files.readString(out.resolve("report.html")))
        .contains("at least 20 people", "at least 20 of each", "Too few people to tell")
        .doesNotContain("the limits in force fit");
    // 25 people with a first attack are enough for the share with bands, not for a limit
    assertThat(Files.readString(out.resolve("proposed-policy.json")))
        .contains("probability.share.own")
        .doesNotContain(".upper");
  }

  @Test
  void cohort_signedProposal_isAPolicyAndChangesVerdictsWithAReason() throws IOException {
    Path out = folder.resolve("one");
    Path table = table(140);
    // everybody counts as a control here, so that there are enough for limits by rank
    String all = "non-inflammatory,other-inflammatory,ms";
    cohort(table, out, "--controls", all, "--signed-by", "Dr Example");
    assertThat(Files.readString(out.resolve("summary.json")))
        .contains("\"method\" : \"rank\"", "\"upperByAge\"");
    Path earlier = out.resolve("interpretations.csv");
    Run again =
        cohort(
            table,
            folder.resolve("two"),
            "--against",
            earlier.toString(),
            "--policy",
            out.resolve("policy.json").toString());

    assertThat(again.code()).as(again.err()).isZero();
    List<String> changes = Files.readAllLines(folder.resolve("two/changes.csv"));
    assertThat(changes.getFirst()).isEqualTo("id,column,before,now,why");
    assertThat(changes)
        .hasSizeGreaterThan(1)
        .anyMatch(c -> c.contains("kappa-index.verdict") && c.contains("the limit or a rule"));
    assertThat(Files.readString(folder.resolve("two/summary.json"))).contains("Dr Example");
  }

  @Test
  void cohort_badRows_areNamedAndLeftOut() throws IOException {
    Path file = table(30);
    List<String> lines = Files.readAllLines(file);
    lines.set(3, lines.get(3).replace("invented-000003,", "invented-000002,"));
    lines.set(5, lines.get(5).replace(",cells,", ",cels,"));
    Files.write(file, lines);
    Run run = cohort(file, folder.resolve("out"));

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("has the same id", "row 6");
    assertThat(Files.readAllLines(folder.resolve("out/interpretations.csv"))).hasSize(29);
    assertThat(Files.readString(folder.resolve("out/summary.json"))).contains("\"refused\" : 2");
  }

  /** A table over a mebibyte is read in parts; blanks around a note make it long. */
  @Test
  void cohort_aLongTable_isReadInPartsWithTheRowsOfTheFile() throws IOException {
    List<String> lines = Files.readAllLines(TABLE).subList(0, 301);
    String blanks = " ".repeat(4_000);
    List<String> padded = new ArrayList<>();
    padded.add(lines.getFirst() + ",note");
    lines.subList(1, lines.size()).forEach(line -> padded.add(line + "," + blanks));
    padded.set(280, padded.get(280).replace(",cells,", ",cels,"));
    Path file = folder.resolve("long.csv");
    Files.write(file, padded);
    Run run = cohort(file, folder.resolve("out"));

    assertThat(Files.size(file)).isGreaterThan(1 << 20);
    assertThat(run.code()).isEqualTo(3);
    // the heading is row 1, so that the 280th person stands in row 281
    assertThat(run.err()).contains("row 281");
    assertThat(Files.readAllLines(folder.resolve("out/interpretations.csv"))).hasSize(300);
  }

  @Test
  void cohort_numbersAlone_sumsUpWhatTheWholeCohortShows() throws IOException {
    Path whole = folder.resolve("whole");
    Path numbers = folder.resolve("numbers");
    cohort(table(30), whole);
    Run run = cohort(folder.resolve("table.csv"), numbers, "--numbers", "--uncertainty");

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).containsPattern("Computed 30 in \\d+ s");
    String summary = Files.readString(numbers.resolve("summary.json"));
    assertThat(summary).contains("\"rows\" : 30", "\"expectedAboveLimit\"");
    // the same sums of the same numbers, whichever way they were computed
    assertThat(mean(summary, "kappa-index"))
        .isEqualTo(mean(Files.readString(whole.resolve("summary.json")), "kappa-index"));
  }

  private static String mean(String summary, String code) {
    int from = summary.indexOf("\"mean\"", summary.indexOf("\"code\" : \"" + code + "\""));
    return summary.substring(from, summary.indexOf('\n', from));
  }

  @Test
  void cohort_numbersOfATableThatHoldsNone_areRefused() throws IOException {
    Path out = folder.resolve("out");
    Path empty = Files.writeString(folder.resolve("empty.csv"), "id,albumin.csf\na,200\n");
    Path bad =
        Files.writeString(
            folder.resolve("bad.csv"), "albumin.csf,albumin.serum\nmany,41000\n200,41000\n");
    Run exchanged = cohort(table(30, "albumin.csf", "albumin.serum"), out, "--numbers");

    assertThat(exchanged.code()).isEqualTo(3);
    assertThat(exchanged.err()).contains("look exchanged", "Nothing was written");
    assertThat(cohort(empty, out, "--numbers").err()).contains("no albumin.serum");
    assertThat(cohort(folder, out, "--numbers").code()).isEqualTo(3);
    assertThat(out).doesNotExist();
    Run left = cohort(bad, out, "--numbers");
    assertThat(left.code()).isEqualTo(3);
    assertThat(left.err()).contains("row 2, albumin.csf");
    assertThat(Files.readString(out.resolve("summary.json"))).contains("\"rows\" : 1");
  }

  @Test
  void cohort_aFolderOfWorkupsAndLines_takesEach() throws IOException {
    Path in = folder.resolve("in");
    Path deeper = Files.createDirectories(in.resolve("deeper"));
    Files.copy(Path.of("../examples/typical-ms.json"), deeper.resolve("typical-ms.json"));
    Files.copy(Path.of("../examples/gel-normal.png"), deeper.resolve("a-picture.png"));
    String line = "{\"workup\": 1, \"id\": \"%s\", \"results\": []}";
    Files.writeString(
        in.resolve("more.ndjson"),
        String.join("\n", line.formatted("one"), "", "{\"workup\": 1", line.formatted("two")));
    Run run = cohort(in, folder.resolve("out"));

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("more.ndjson:3");
    assertThat(Files.readAllLines(folder.resolve("out/interpretations.csv")))
        .hasSize(4)
        .anyMatch(row -> row.startsWith("typical-ms,"))
        .anyMatch(row -> row.startsWith("one,"))
        .anyMatch(row -> row.startsWith("two,"));
  }

  @Test
  void cohort_whatIsNotThere_isSaid() {
    Run missing = cohort(folder.resolve("missing.csv"), folder.resolve("out"));
    Run engine = cohort(TABLE, folder.resolve("out"), "--engine", "steam");

    assertThat(missing.code()).isEqualTo(3);
    assertThat(missing.err()).contains("missing.csv", "cannot be read");
    assertThat(engine.code()).isEqualTo(2);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void folder_brokenOff_leavesNothing() throws IOException {
    Path out = folder.resolve("out");
    CohortFolder.beside(out).close();

    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void progress_halfDone_saysRateAndTimeLeft() {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    long[] now = {0};
    Progress progress =
        new Progress(new PrintStream(err, true, StandardCharsets.UTF_8), () -> now[0], "Read");
    now[0] = 2_000_000_000L;
    progress.say(1_000, 41_000);
    progress.say(1_001, 41_000);

    // 1,000 in 2 s are 500 a second; 40,000 more take 80 s
    assertThat(err.toString(StandardCharsets.UTF_8))
        .isEqualToIgnoringNewLines("Read 1,000 of 41,000, 500 a second, 1 min 20 s left");
  }
}
