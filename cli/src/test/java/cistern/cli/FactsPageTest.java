package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.workup.WorkupFile;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Bibliography;
import cistern.fact.Fact;
import cistern.fact.FactTable;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.fact.Provenance;
import cistern.fact.Reference;
import cistern.fact.Status;
import cistern.finding.Verdict;
import cistern.gel.GelFacts;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.report.look.ReportFacts;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Writes {@code docs/facts.md}: how many facts of each status there are, and which of them carry
 * most verdicts.
 */
class FactsPageTest {

  private static final Path PAGE = Path.of("target", "pages", "facts.md");
  private static final int SHOWN = 10;

  private static final String HEAD =
      """
      # The facts in force

      Written by the tests through `./check`; not edited by hand (`./check --refresh` rewrites it).
      `./cistern facts` lists every one with value, unit, status, source and place, and
      `./cistern facts --format csl` writes the bibliography for a reference manager. Where nothing
      was looked up, the status says so: common practice, project rule, memory.

      """;

  /** All that can be asked for: the medicine, the gel, the papers and the clinic. */
  private static Facts all() {
    return ReportFacts.of(GelFacts.standard()).with(FactTable.read(ShowFacts.class, "clinic.tsv"));
  }

  private static List<Interpretation> examples() throws IOException {
    WorkupFile file = WorkupFile.of(all());
    Interpreter interpreter = Interpreter.of(all());
    try (Stream<Path> files = Files.list(Path.of("..", "examples"))) {
      return files
          .filter(path -> path.toString().endsWith(".json"))
          .sorted()
          .map(file::read)
          .filter(Understood.class::isInstance)
          .map(read -> interpreter.interpret(((Understood) read).workup()))
          .toList();
    }
  }

  /** The grounds of every verdict that was given. */
  private static List<Grounds> verdicts(List<Interpretation> interpretations) {
    return interpretations.stream()
        .flatMap(
            i ->
                Stream.concat(
                    i.findings().all().stream()
                        .filter(f -> f.verdict() != Verdict.UNDETERMINED)
                        .map(f -> f.grounds()),
                    i.weighed().criteria().stream()
                        .filter(r -> !r.verdict().word().equals("undetermined"))
                        .map(r -> r.grounds())))
        .toList();
  }

  /** How many verdicts name each citation, the most first. */
  private static Map<Grounds.Citation, Long> carried(List<Grounds> verdicts) {
    return verdicts.stream()
        .flatMap(grounds -> grounds.citations().stream())
        .collect(Collectors.groupingBy(c -> c, LinkedHashMap::new, Collectors.counting()));
  }

  private static String byStatus(Facts facts) {
    Map<String, Long> counts =
        facts.all().stream()
            .collect(
                Collectors.groupingBy(
                    f -> f.status().word(), LinkedHashMap::new, Collectors.counting()));
    return """
    | status | facts |
    | --- | ---: |
    """
        + counts.entrySet().stream()
            .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
            .map(e -> "| %s | %d |%n".formatted(e.getKey(), e.getValue()))
            .collect(Collectors.joining())
        + "| all | %d |%n".formatted(facts.all().size());
  }

  private static String most(
      Facts facts, Map<Grounds.Citation, Long> carried, Predicate<Grounds.Citation> wanted) {
    return """
    | verdicts | facts | status | source |
    | ---: | --- | --- | --- |
    """
        + carried.entrySet().stream()
            .filter(e -> wanted.test(e.getKey()))
            .sorted(
                Map.Entry.<Grounds.Citation, Long>comparingByValue()
                    .reversed()
                    .thenComparing(e -> e.getKey().source(), Comparator.naturalOrder()))
            .limit(SHOWN)
            .map(e -> row(facts, e.getKey(), e.getValue()))
            .collect(Collectors.joining());
  }

  private static String row(Facts facts, Grounds.Citation citation, long verdicts) {
    List<String> keys =
        facts.all().stream()
            .filter(f -> Grounds.of(f).citations().contains(citation))
            .map(Fact::key)
            .toList();
    return "| %d | `%s`%s | %s | %s |%n"
        .formatted(
            verdicts,
            keys.getFirst(),
            keys.size() == 1 ? "" : " and %d more of that place".formatted(keys.size() - 1),
            citation.status().word(),
            citation.source().replace("|", "\\|"));
  }

  @Test
  void page_ofAllFacts_countsThemAndSaysWhatCarriesMostVerdicts() throws IOException {
    Facts facts = all();
    List<Interpretation> examples = examples();
    List<Grounds> verdicts = verdicts(examples);
    Map<Grounds.Citation, Long> carried = carried(verdicts);
    String page =
        HEAD
            + "## By status\n\n"
            + byStatus(facts)
            + """

            ## What carries most verdicts

            Counted by interpreting the %d work-ups of `examples/`: each of the %d verdicts on a
            value or by criteria counts for every source and place that it names; facts of one
            source and place stand together.

            """
                .formatted(examples.size(), verdicts.size())
            + most(facts, carried, c -> true)
            + """

            ## The most used of those that nobody read in their source

            """
            + most(facts, carried, c -> c.references().isEmpty() || isUnread(c));
    Files.createDirectories(PAGE.getParent());
    Files.writeString(PAGE, page.replace("\r\n", "\n"));

    assertThat(examples.size()).isGreaterThan(15);
    assertThat(page).contains("| all | " + facts.all().size() + " |", "| read | ");
    assertThat(page.lines().filter(l -> l.matches("\\| \\d+ \\| `.*")))
        .hasSizeBetween(SHOWN + 1, 2 * SHOWN);
  }

  private static boolean isUnread(Grounds.Citation citation) {
    return switch (citation.status()) {
      case MEMORY, SECOND_HAND, COMMON_PRACTICE, PROJECT_RULE -> true;
      case READ, DERIVED, LOCAL -> false;
    };
  }

  /** No publication stands in the bibliography that nothing cites. */
  @Test
  void bibliography_everyEntry_isCitedByAFactACohortOrACode() {
    Set<String> cited =
        Stream.concat(
                all().all().stream()
                    .flatMap(f -> f.cited().references().stream())
                    .map(r -> r.key()),
                tables())
            .collect(Collectors.toSet());

    assertThat(Bibliography.standard().all())
        .extracting(Reference::key)
        .allSatisfy(key -> assertThat(cited).contains(key));
  }

  /** The cells of tables that are not facts: cohorts, codes and words of laboratories. */
  private static Stream<String> tables() {
    return Stream.of(
            "differential/cohorts.tsv",
            "differential/adjusted.tsv",
            "exchange/lab/loinc.tsv",
            "exchange/lab/fluids.tsv")
        .flatMap(FactsPageTest::rows)
        .flatMap(Stream::of);
  }

  private static Stream<String[]> rows(String table) {
    try (InputStream in =
        Objects.requireNonNull(Facts.class.getResourceAsStream("/cistern/" + table))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .map(line -> line.split("\t", -1));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Words of laboratories, too, have a status, and a reference unless it says why not. */
  @ParameterizedTest
  @ValueSource(
      strings = {"lab/fluids.tsv", "lab/names.tsv", "lab/answers.tsv", "ucum/spellings.tsv"})
  void words_ofLaboratories_citeAnEntryUnlessTheirStatusSaysThatNothingWasLookedUp(String table) {
    rows("exchange/" + table)
        .skip(1)
        .forEach(
            row -> {
              Status status = Status.parse(row[2]).orElseThrow();
              assertThat(Provenance.parse(row[3], status).words()).as(row[0]).isNotBlank();
            });
  }
}
