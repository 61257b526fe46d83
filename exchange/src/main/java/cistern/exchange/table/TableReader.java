package cistern.exchange.table;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.Fluids;
import cistern.exchange.lab.LabReport;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.LocalMapping.Entry;
import cistern.exchange.lab.LocalMapping.Kind;
import cistern.exchange.lab.NumberText;
import cistern.exchange.table.CellGrid.Row;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Spellings;
import cistern.fact.Facts;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads tables. Without a mapping the headings are read by their names, which is said in each
 * work-up; with one, the mapping is held against the headings before anything is read.
 */
public final class TableReader {

  private final InputLimits limits;
  private final Spellings spellings;
  private final LocalMapping mapping;

  private TableReader(Facts facts, LocalMapping mapping) {
    this.limits = InputLimits.of(facts);
    this.spellings = Spellings.of(Conversions.of(facts));
    this.mapping = mapping;
  }

  /** A reader under some facts and a mapping, which may say nothing. */
  public static TableReader of(Facts facts, LocalMapping mapping) {
    return new TableReader(facts, mapping);
  }

  /** The reports of a text; none, without a problem, when it is neither a table nor a report. */
  public List<LabReport> readText(byte[] bytes, InputProblems problems) {
    Optional<TableText> text = TableText.of(bytes);
    if (text.isEmpty()) {
      problems.add(InputProblem.of(InputTrouble.CHARSET, "", "UTF-8, UTF-16 or Windows-1252"));
      return List.of();
    }
    String plain = text.get().text().replace("\r\n", "\n").replace('\r', '\n');
    List<List<Row>> readings =
        SeparatedText.readings(plain).stream().filter(rows -> isSmall(rows, problems)).toList();
    Optional<TableLayout> told =
        readings.stream()
            .flatMap(rows -> TableLayout.ofPlainHeadings(rows, spellings, mapping).stream())
            .findFirst();
    boolean isPlain = told.isPresent();
    Optional<TableLayout> layout = told.or(() -> searched(readings));
    if (!problems.isValid()) {
      return List.of();
    }
    InputProblems ofTable = new InputProblems();
    List<LabReport> table =
        layout.map(l -> reports(l, text.get().notes(), ofTable)).orElse(List.of());
    if (isPlain || !mapping.entries().isEmpty()) {
      ofTable.invalid().forEach(problems::add);
      return table;
    }
    InputProblems ofPage = new InputProblems();
    List<LabReport> page = page(plain, text.get().notes(), ofPage);
    boolean isPage = layout.isEmpty() || usable(page) > usable(table);
    (isPage ? ofPage : ofTable).invalid().forEach(problems::add);
    return isPage ? page : table;
  }

  private List<LabReport> page(String plain, List<LeftOver> notes, InputProblems problems) {
    List<Row> lines = SeparatedText.aligned(plain);
    return new PrintedReport(spellings, mapping, Marks.of(lines, mapping.mark()), notes)
        .read(lines, problems).stream().toList();
  }

  /**
   * How many results have a number, a unit and a fluid: a page of print can look like a table, and
   * is what explains more of it.
   */
  private long usable(List<LabReport> reports) {
    return reports.stream()
        .flatMap(report -> report.results().stream())
        .filter(result -> NumberText.isNumber(result.value()))
        .filter(result -> spellings.isUnit(result.unit()))
        .filter(
            result -> result.specimen().words().stream().anyMatch(w -> Fluids.parse(w).isPresent()))
        .count();
  }

  /** The reports of a workbook: of its first sheet that has headings. */
  public List<LabReport> readWorkbook(byte[] bytes, InputProblems problems) {
    for (CellGrid sheet : Workbook.read(bytes, limits, problems)) {
      Optional<TableLayout> layout = TableLayout.of(sheet.rows(), spellings, mapping);
      if (layout.isPresent()) {
        return reports(layout.get(), sheet.notes(), problems);
      }
    }
    if (problems.isValid()) {
      problems.add(
          InputProblem.of(InputTrouble.NOT_A_REPORT, "", "no row of headings was recognised"));
    }
    return List.of();
  }

  /** The headings of a table, to propose a mapping; none when it is no table. */
  public List<Heading> headings(byte[] bytes, boolean isWorkbook, InputProblems problems) {
    if (isWorkbook) {
      return Workbook.read(bytes, limits, problems).stream()
          .flatMap(sheet -> TableLayout.of(sheet.rows(), spellings, mapping).stream())
          .map(TableLayout::headings)
          .findFirst()
          .orElse(List.of());
    }
    return TableText.of(bytes).stream()
        .map(text -> text.text().replace("\r\n", "\n").replace('\r', '\n'))
        .flatMap(text -> SeparatedText.readings(text).stream())
        .flatMap(rows -> TableLayout.of(rows, spellings, mapping).stream())
        .max(Comparator.comparingInt(TableReader::weight))
        .map(TableLayout::headings)
        .orElse(List.of());
  }

  private Optional<TableLayout> searched(List<List<Row>> readings) {
    return readings.stream()
        .flatMap(rows -> TableLayout.of(rows, spellings, mapping).stream())
        .max(Comparator.comparingInt(TableReader::weight));
  }

  private static int weight(TableLayout layout) {
    return layout.headings().stream().mapToInt(Heading::weight).sum();
  }

  private boolean isSmall(List<Row> rows, InputProblems problems) {
    long cells = rows.stream().mapToLong(row -> row.cells().size()).sum();
    if (cells > limits.values()) {
      problems.add(InputProblem.of(InputTrouble.TOO_MANY_VALUES, "", limits.values()));
      return false;
    }
    return true;
  }

  private List<LabReport> reports(
      TableLayout layout, List<LeftOver> notes, InputProblems problems) {
    checkMapping(layout, problems);
    if (!problems.isValid()) {
      return List.of();
    }
    List<LeftOver> all = new ArrayList<>(notes);
    if (mapping.confirmedBy().isEmpty() && !isOwn(layout)) {
      all.add(new LeftOver("row " + layout.headingRow(), Why.HEADINGS, "", "", ""));
    }
    Marks marks = Marks.of(layout.body(), mapping.mark());
    return new TableRows(layout, spellings, mapping, marks).reports(all);
  }

  /** Whether every heading is one of this program's own tables. */
  private static boolean isOwn(TableLayout layout) {
    List<Heading> measured =
        layout.headings().stream().filter(h -> h.isMeasured() || h.isFluid()).toList();
    return !measured.isEmpty()
        && measured.stream().allMatch(h -> h.text().matches("[a-z-]+\\.[A-Za-z]+"));
  }

  /** A mapping must fit the table: its headings are there and do not say something else. */
  private void checkMapping(TableLayout layout, InputProblems problems) {
    Set<String> found = new HashSet<>();
    Set<String> samples = new HashSet<>();
    for (Heading heading : layout.headings()) {
      heading
          .mapped()
          .ifPresent(
              entry -> {
                found.add(entry.place());
                checkEntry(heading, entry, problems);
              });
      if (heading.isMeasured() && !heading.fluids().isEmpty()) {
        String sample = heading.subject().orElseThrow() + " " + heading.fluids();
        if (!samples.add(sample) && heading.mapped().isPresent()) {
          problems.add(
              InputProblem.of(InputTrouble.ENTRY_TWICE, heading.mapped().get().place() + ".means"));
        }
      }
    }
    mapping.entries().stream()
        .filter(e -> e.kind() == Kind.HEADING && !found.contains(e.place()))
        .forEach(
            e ->
                problems.add(
                    InputProblem.of(InputTrouble.HEADING_MISSING, e.place() + ".heading")));
  }

  private void checkEntry(Heading heading, Entry entry, InputProblems problems) {
    Heading said = Heading.of(heading.text(), spellings, LocalMapping.NONE);
    Optional<Fluids.Fluid> named =
        said.fluids().size() == 1 ? Fluids.parse(said.fluids().getFirst()) : Optional.empty();
    entry
        .meaning()
        .in()
        .filter(in -> named.isPresent() && !in.name().equals(named.get().name()))
        .ifPresent(
            in ->
                problems.add(
                    InputProblem.of(
                        InputTrouble.MAPPED_OTHERWISE,
                        entry.place() + ".in",
                        said.fluids().getFirst(),
                        in.code())));
    boolean isOther =
        said.analyte().isPresent()
            && entry.meaning().analyte().isPresent()
            && !said.analyte().equals(entry.meaning().analyte());
    if (isOther) {
      problems.add(
          InputProblem.of(
              InputTrouble.MAPPED_OTHERWISE,
              entry.place() + ".means",
              said.subject().orElse(""),
              entry.meaning().subject()));
    }
    checkUnit(said, entry, problems);
  }

  private void checkUnit(Heading said, Entry entry, InputProblems problems) {
    Optional<String> unit = entry.meaning().unit();
    if (unit.isEmpty() || said.units().size() != 1) {
      return;
    }
    String written = said.units().getFirst();
    boolean isSame =
        entry
            .meaning()
            .analyte()
            .map(a -> spellings.ucum(written, a).equals(spellings.ucum(unit.get(), a)))
            .orElse(written.equals(unit.get()));
    if (!isSame) {
      problems.add(
          InputProblem.of(
              InputTrouble.MAPPED_OTHERWISE, entry.place() + ".unit", written, unit.get()));
    }
  }
}
