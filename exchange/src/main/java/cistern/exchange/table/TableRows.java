package cistern.exchange.table;

import cistern.exchange.lab.Coding;
import cistern.exchange.lab.LabReport;
import cistern.exchange.lab.LeftOver;
import cistern.exchange.lab.LeftOver.Why;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.LoincCode;
import cistern.exchange.lab.ReportedPerson;
import cistern.exchange.lab.ReportedResult;
import cistern.exchange.lab.ReportedResult.Range;
import cistern.exchange.lab.ReportedResult.Remarks;
import cistern.exchange.lab.ReportedResult.Standing;
import cistern.exchange.lab.ReportedSpecimen;
import cistern.exchange.lab.WorkupFields;
import cistern.exchange.table.CellGrid.Cell;
import cistern.exchange.table.CellGrid.Row;
import cistern.exchange.ucum.Spellings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** The rows of a table as reports, one a person. */
final class TableRows {

  private static final Pattern NOTHING = Pattern.compile("[-–—.]*|(?i)n/?a|#N/A");
  private static final Pattern PAIR = Pattern.compile("\\s+/\\s+|\\s*;\\s*");
  private static final List<String> BESIDE =
      List.of("range", "flag", "comment", "ignore", "computed", "unit", "status", "assay");

  private final TableLayout layout;
  private final Spellings spellings;
  private final LocalMapping mapping;
  private final Marks marks;
  private final Map<String, List<Group>> groups = new LinkedHashMap<>();

  TableRows(TableLayout layout, Spellings spellings, LocalMapping mapping, Marks marks) {
    this.layout = layout;
    this.spellings = spellings;
    this.mapping = mapping;
    this.marks = marks;
  }

  /** What the rows of one person bring. */
  private static final class Group {
    private final Optional<String> id;
    private final ReportedPerson person;
    private final List<ReportedResult> results = new ArrayList<>();
    private final List<LeftOver> notes = new ArrayList<>();
    private final Map<String, String> fields = new LinkedHashMap<>();

    Group(Optional<String> id, ReportedPerson person) {
      this.id = id;
      this.person = person;
    }

    private LabReport toReport(List<LeftOver> leftOver) {
      return new LabReport("table", id, false, person, results, leftOver, fields);
    }
  }

  /**
   * The reports.
   *
   * @param notes what was noted of the whole table
   */
  List<LabReport> reports(List<LeftOver> notes) {
    Map<String, String> above = KeyedLines.fields(layout.above());
    for (Row row : layout.body()) {
      if (!row.isBlank()) {
        row(row, above);
      }
    }
    return groups.values().stream()
        .flatMap(List::stream)
        .map(g -> g.toReport(both(notes, g.notes)))
        .toList();
  }

  private static List<LeftOver> both(List<LeftOver> one, List<LeftOver> other) {
    List<LeftOver> all = new ArrayList<>(one);
    all.addAll(other);
    return all;
  }

  private void row(Row row, Map<String, String> above) {
    Map<String, String> fields = new LinkedHashMap<>(above);
    for (int i = 0; i < layout.headings().size(); i++) {
      Heading heading = layout.headings().get(i);
      boolean isField = heading.subject().isPresent() && !heading.isMeasured();
      if (isField && heading.fluids().isEmpty() && !row.cell(i).isBlank()) {
        fields.putIfAbsent(heading.subject().orElseThrow(), row.cell(i).text());
        if (layout
            .column(heading.subject().orElseThrow())
            .filter(Integer.valueOf(i)::equals)
            .isPresent()) {
          fields.put(heading.subject().orElseThrow(), row.cell(i).text());
        }
      }
    }
    List<LeftOver> notes = new ArrayList<>();
    PersonCells cells = new PersonCells(fields, "row " + row.number(), mapping, notes);
    Group group = group(cells, row);
    group.notes.addAll(notes);
    fields.forEach(
        (field, text) -> {
          if (WorkupFields.isPath(field)) {
            group.fields.putIfAbsent(field, text);
          }
        });
    Optional.ofNullable(fields.get("comment"))
        .ifPresent(
            text -> group.notes.add(new LeftOver("row " + row.number(), Why.NOTE, "", text, "")));
    if (layout.isByTest()) {
      byTest(row, cells, group);
    }
    measured(row, cells, group);
    group.notes.addAll(notes.stream().filter(n -> !group.notes.contains(n)).toList());
  }

  /**
   * Whose a row is; one that leaves the column of persons blank is nobody's but its own, and rows
   * of one identifier that name two persons are of two.
   */
  private Group group(PersonCells cells, Row row) {
    boolean isManyRows = layout.isByTest() || layout.column("fluid").isPresent();
    boolean isNamed = layout.column("person.id").or(() -> layout.column("id")).isPresent();
    String key =
        cells
            .text("person.id")
            .or(() -> cells.text("id"))
            .orElse(isManyRows && !isNamed ? "" : "row " + row.number());
    String own = isManyRows ? key : key + " " + row.number();
    Optional<String> id =
        isManyRows
            ? cells.text("person.id").or(() -> cells.text("id"))
            : cells.text("id").or(() -> cells.text("person.id"));
    ReportedPerson person = cells.person();
    List<Group> known = groups.computeIfAbsent(own, k -> new ArrayList<>());
    Optional<Group> same = known.stream().filter(g -> !g.person.isAgainst(person)).findFirst();
    if (same.isPresent()) {
      return same.get();
    }
    known.add(new Group(id.or(() -> Optional.of("row-" + row.number())), person));
    return known.getLast();
  }

  /** Columns that name their analyte; the fluid stands in the heading or in the row. */
  private void measured(Row row, PersonCells cells, Group group) {
    for (int i = 0; i < layout.headings().size(); i++) {
      Heading heading = layout.headings().get(i);
      Cell cell = row.cell(i);
      boolean isEmpty = cell.isBlank() || NOTHING.matcher(cell.text()).matches();
      if (isEmpty || i == layout.testColumn().orElse(-1)) {
        continue;
      }
      if (heading.isMeasured()) {
        List<String> fluids =
            heading.fluids().isEmpty() ? cells.text("fluid").stream().toList() : heading.fluids();
        List<Coding> codes = List.of(Coding.own(heading.subject().orElseThrow()));
        values(row.place(i), codes, cell, new Beside(fluids, units(heading, cells), cells), group);
      } else if (heading.weight() == 0 && !layout.isByTest()) {
        String name = heading.text().isEmpty() ? "column " + (i + 1) : heading.text();
        group.notes.add(new LeftOver(row.place(i), Why.UNKNOWN_CODE, name, cell.text(), ""));
      }
    }
  }

  /** What stands beside a value: words for its fluid, its units, and the row's fields. */
  private record Beside(List<String> fluids, List<String> units, PersonCells cells) {

    /** What stands beside the value of one of several fluids. */
    Beside of(int index) {
      List<String> own = units.size() == fluids.size() ? List.of(units.get(index)) : units;
      return new Beside(List.of(fluids.get(index)), own, cells);
    }
  }

  private List<String> units(Heading heading, PersonCells cells) {
    if (!heading.units().isEmpty()) {
      return heading.units();
    }
    return heading.subject().flatMap(s -> cells.text(s + ".unit")).map(List::of).orElse(List.of());
  }

  /** A value, or one for each of two fluids. */
  private void values(String place, List<Coding> codes, Cell cell, Beside beside, Group group) {
    String[] parts = PAIR.split(cell.text(), -1);
    int fluids = beside.fluids().size();
    if (fluids < 2) {
      group.results.add(result(place, codes, cell, beside));
      return;
    }
    if (parts.length != fluids) {
      group.notes.add(
          new LeftOver(place, Why.VALUE_UNCLEAR, codes.getFirst().toText(), cell.text(), ""));
      return;
    }
    for (int i = 0; i < fluids; i++) {
      Cell part = new Cell(parts[i].strip(), false);
      group.results.add(result(place, codes, part, beside.of(i)));
    }
  }

  /** A value in one fluid; of two units nobody says which is meant. */
  private ReportedResult result(String place, List<Coding> codes, Cell cell, Beside beside) {
    String fluid = beside.fluids().isEmpty() ? "" : beside.fluids().getFirst();
    String unit = beside.units().size() == 1 ? beside.units().getFirst() : "";
    String name =
        cistern.exchange.lab.Fluids.parse(fluid)
            .map(f -> f.name().toLowerCase(java.util.Locale.ROOT))
            .orElse(fluid);
    PersonCells cells = beside.cells();
    ReportedSpecimen specimen =
        new ReportedSpecimen(
            fluid.isEmpty() ? List.of() : List.of(fluid),
            cells.at(name.isEmpty() ? "csf" : name.equals("csf") ? name : "serum"),
            Optional.empty());
    return new ReportedResult(
        place,
        codes,
        specimen,
        marks.plain(cell),
        unit,
        standing(cells.text("status").orElse("")),
        new Remarks(
            Optional.empty(),
            cells.text("range").map(text -> new Range(place, text, List.of())),
            cells.text("assay"),
            Optional.empty(),
            List.of()));
  }

  private static Standing standing(String status) {
    return switch (status.strip().toLowerCase(java.util.Locale.ROOT)) {
      case "amended", "corrected", "c" -> Standing.AMENDED;
      case "preliminary", "p" -> Standing.PRELIMINARY;
      case "cancelled", "canceled", "x" -> Standing.CANCELLED;
      case "pending", "registered", "i" -> Standing.AWAITED;
      default -> Standing.FINAL;
    };
  }

  /** One analyte or one result a row. */
  private void byTest(Row row, PersonCells cells, Group group) {
    String name = layout.testColumn().map(i -> row.cell(i).text()).orElse("");
    String code = cells.text("code").orElse("");
    Heading test = Heading.of(name, spellings, LocalMapping.NONE);
    List<Coding> codes = codes(name, code, test);
    List<Integer> columns = layout.fluidColumns();
    List<String> rowUnits =
        cells.text("unit").map(text -> units(text, columns.size())).orElse(test.units());
    if (codes.isEmpty()) {
      return;
    }
    for (int k = 0; k < columns.size(); k++) {
      int i = columns.get(k);
      Heading heading = layout.headings().get(i);
      List<String> own = own(row, i).orElse(heading.units());
      List<String> units =
          !own.isEmpty() ? own : rowUnits.size() > 1 ? List.of(rowUnits.get(k)) : rowUnits;
      add(row, i, codes, new Beside(heading.fluids(), units, cells), group);
    }
    layout
        .column("value")
        .ifPresent(
            i -> {
              List<String> fluids = cells.text("fluid").map(List::of).orElse(test.fluids());
              add(row, i, codes, new Beside(fluids, rowUnits, cells), group);
            });
  }

  /** The unit in a column of units directly behind a column of values. */
  private Optional<List<String>> own(Row row, int column) {
    boolean isUnit =
        column + 1 < layout.headings().size()
            && layout.headings().get(column + 1).isField("unit")
            && layout.headings().stream().filter(h -> h.isField("unit")).count() > 1;
    return isUnit && !row.cell(column + 1).isBlank()
        ? Optional.of(List.of(row.cell(column + 1).text()))
        : Optional.empty();
  }

  private void add(Row row, int column, List<Coding> codes, Beside beside, Group group) {
    Cell cell = row.cell(column);
    if (!cell.isBlank() && !NOTHING.matcher(cell.text()).matches()) {
      values(row.place(column), codes, cell, beside, group);
    }
  }

  private static List<String> units(String text, int fluids) {
    String[] parts = PAIR.split(text, -1);
    return parts.length == fluids && fluids > 1 ? List.of(parts) : List.of(text);
  }

  private static List<Coding> codes(String name, String code, Heading test) {
    List<Coding> codes = new ArrayList<>();
    if (LoincCode.isWellFormed(code)) {
      codes.add(new Coding(Coding.LOINC, code, name));
    } else if (!code.isEmpty()) {
      codes.add(new Coding("", code, name));
    }
    Optional<String> subject =
        test.subject().filter(s -> !BESIDE.contains(s) || s.equals("computed"));
    if (subject.isPresent()) {
      codes.add(Coding.own(subject.get()));
    }
    if (!name.isBlank()) {
      codes.add(new Coding("", "", name));
    }
    return codes;
  }
}
