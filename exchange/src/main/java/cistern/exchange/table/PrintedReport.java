package cistern.exchange.table;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.lab.Coding;
import cistern.exchange.lab.Fluids;
import cistern.exchange.lab.LabReport;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.ReportedResult;
import cistern.exchange.lab.ReportedResult.Range;
import cistern.exchange.lab.ReportedResult.Remarks;
import cistern.exchange.lab.ReportedResult.Standing;
import cistern.exchange.lab.ReportedSpecimen;
import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import cistern.exchange.ucum.Spellings;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A report whose text was copied out of a page: a result a line, under headings that name a fluid.
 */
final class PrintedReport {

  private static final Pattern RESULT =
      Pattern.compile(
          "(?<name>[^\\d<>≤≥]*?[^\\d<>≤≥\\s:]|[^<>≤≥]*?\\))[\\s:]+(?<value>(?:[<>]=?|≤|≥)?\\s*[-+]?"
              + "\\d[\\d.,]*(?:\\s*:\\s*\\d+)?)(?<rest>.*)");

  /** A limit, two numbers, or one in brackets: one alone may be the value in another unit. */
  private static final Pattern RANGE =
      Pattern.compile(
          "(?=[(\\[<>≤≥]|\\d[\\d.,]*\\s*[-–])[(\\[]?\\s*"
              + "(?<range>(?:[<>≤≥]\\s*)?\\d[\\d.,]*(?:\\s*[-–]\\s*\\d[\\d.,]*)?)\\s*[)\\]]?\\s*");

  private static final Pattern DIGIT = Pattern.compile("\\d");

  private final Spellings spellings;
  private final LocalMapping mapping;
  private final Marks marks;
  private final Map<String, String> fields = new LinkedHashMap<>();
  private final List<ReportedResult> results = new ArrayList<>();
  private final List<LeftOver> notes;
  private Optional<String> section = Optional.empty();

  PrintedReport(Spellings spellings, LocalMapping mapping, Marks marks, List<LeftOver> notes) {
    this.spellings = spellings;
    this.mapping = mapping;
    this.marks = marks;
    this.notes = new ArrayList<>(notes);
  }

  /** The report; empty when no line holds a result, or with a problem noted. */
  Optional<LabReport> read(List<Row> rows, InputProblems problems) {
    KeyedLines.fields(rows).forEach(fields::putIfAbsent);
    checkPerson(rows, problems);
    rows.stream().filter(row -> !row.isBlank()).forEach(this::line);
    PersonCells cells = new PersonCells(fields, "line 1", mapping, notes);
    return results.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new LabReport(
                "table",
                cells.text("id").or(() -> cells.text("person.id")),
                false,
                cells.person(),
                results.stream().map(r -> dated(r, cells)).toList(),
                notes));
  }

  /** One report is of one person: a page may name them again, and not another. */
  private void checkPerson(List<Row> rows, InputProblems problems) {
    List<String> who =
        fields.containsKey("person.id") ? List.of("person.id") : List.of("name", "birthDate");
    Map<String, Integer> first = new HashMap<>();
    for (Row row : rows) {
      for (KeyedLines.Field field : KeyedLines.fields(row)) {
        if (!who.contains(field.name())) {
          continue;
        }
        int line = first.computeIfAbsent(field.name(), name -> row.number());
        if (!field.text().equals(fields.get(field.name()))) {
          problems.add(
              InputProblem.of(InputTrouble.TWO_PERSONS, "line " + row.number(), "line " + line));
          return;
        }
      }
    }
  }

  private static ReportedResult dated(ReportedResult result, PersonCells cells) {
    boolean isCsf =
        result.specimen().words().stream()
            .anyMatch(w -> Fluids.parse(w).filter(f -> f == Fluids.Fluid.CSF).isPresent());
    return new ReportedResult(
        result.place(),
        result.codes(),
        result.specimen().takenAt(cells.at(isCsf ? "csf" : "serum")),
        result.value(),
        result.unit(),
        result.standing(),
        result.remarks());
  }

  private void line(Row row) {
    String text = String.join("  ", row.cells().stream().map(Cell::text).toList()).strip();
    List<KeyedLines.Field> keyed = KeyedLines.fields(row);
    if (!keyed.isEmpty()) {
      keyed.stream()
          .filter(field -> field.name().equals(KeyedLines.FLUID))
          .forEach(field -> section = Optional.of(field.text()));
      return;
    }
    Heading whole = Heading.of(text.replaceFirst("\\s*:\\s*$", ""), spellings, LocalMapping.NONE);
    if (whole.subject().isEmpty() && whole.fluids().size() == 1) {
      section = whole.fluids().stream().findFirst();
      return;
    }
    if (!measured(row, text) && !answered(row, text)) {
      notes.add(new LeftOver("line " + row.number(), Why.NOT_A_RESULT, "", text, ""));
    }
  }

  private boolean measured(Row row, String text) {
    Matcher line = RESULT.matcher(text);
    if (!line.matches()) {
      return false;
    }
    Heading name = Heading.of(line.group("name"), spellings, LocalMapping.NONE);
    if (name.subject().isEmpty()) {
      return false;
    }
    String rest =
        line.group("rest")
            .replaceFirst("(?i)^\\s*(?:\\*+|\\++|-+|[hl]{1,2}|↑|↓)(?=\\s)", "")
            .strip();
    String behind = unit(rest);
    List<String> units =
        Stream.concat(name.units().stream().limit(1), Stream.of(behind))
            .filter(unit -> !unit.isEmpty())
            .toList();
    String after = rest.substring(behind.length()).strip();
    Matcher range = RANGE.matcher(after);
    boolean isRange = range.lookingAt();
    String value = marks.plain(new Cell(line.group("value").strip(), false));
    add(row, name, value, units, isRange ? Optional.of(range.group("range")) : Optional.empty());
    String last = isRange ? after.substring(range.end()) : after;
    if (DIGIT.matcher(last).find()) {
      notes.add(new LeftOver("line " + row.number(), Why.NOTE, "", last, ""));
    }
    return true;
  }

  /** The longest beginning of a text that is a unit. */
  private String unit(String rest) {
    String[] words = rest.split("\\s+", -1);
    String best = "";
    String text = "";
    for (int i = 0; i < Math.min(3, words.length); i++) {
      text = text.isEmpty() ? words[i] : text + " " + words[i];
      boolean isUnit = !text.isBlank() && !text.matches("[\\d.,()-].*") && spellings.isUnit(text);
      best = isUnit && rest.startsWith(text) ? text : best;
    }
    return best;
  }

  /** A name and a word, such as an answer on the bands: in one cell, in two, or in the line. */
  private boolean answered(Row row, String text) {
    List<String> cells =
        row.cells().stream().map(Cell::text).filter(cell -> !cell.isBlank()).toList();
    Heading first = Heading.of(cells.getFirst(), spellings, LocalMapping.NONE);
    if (cells.size() > 1 && (first.isBands() || first.isSerology())) {
      add(row, first, cells.get(1), List.of(), Optional.empty());
      return true;
    }
    return answeredWithin(row, cells.getFirst()) || answeredWithin(row, text);
  }

  private boolean answeredWithin(Row row, String text) {
    String[] words = text.split("[\\s:]+", -1);
    for (int count = words.length - 1; count > 0; count--) {
      String first = String.join(" ", List.of(words).subList(0, count));
      Heading name = Heading.of(first, spellings, LocalMapping.NONE);
      if (name.isBands() || name.isSerology()) {
        String answer = String.join(" ", List.of(words).subList(count, words.length));
        add(row, name, answer, List.of(), Optional.empty());
        return true;
      }
    }
    return false;
  }

  private void add(
      Row row, Heading name, String value, List<String> units, Optional<String> range) {
    String place = "line " + row.number();
    List<String> words = name.fluids().isEmpty() ? section.stream().toList() : name.fluids();
    results.add(
        new ReportedResult(
            place,
            List.of(Coding.own(name.subject().orElseThrow())),
            new ReportedSpecimen(words, Optional.empty(), Optional.empty()),
            value,
            units.isEmpty() ? "" : units.getFirst(),
            Standing.FINAL,
            new Remarks(
                Optional.empty(),
                range.map(text -> new Range(place, text, List.of())),
                Optional.empty(),
                Optional.empty(),
                units)));
  }
}
