package cistern.report.cohort;

import cistern.bands.BandVerdict;
import cistern.cohort.CohortMember;
import cistern.cohort.QualityAmount;
import cistern.cohort.QualityFigure;
import cistern.finding.FindingCode;
import cistern.finding.Verdict;
import cistern.measurement.Answer;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A cohort as a table, one row a puncture, and what each column holds. Columns are separated by
 * commas and quoted where they must be (RFC 4180).
 */
public final class CohortRows {

  private static final Pattern NUMBER = Pattern.compile("-[0-9.]+(E-?[0-9]+)?");
  private static final String FORMULA = "-=+@\t\r";
  private static final String QUOTED = "\",\r\n";
  private static final List<String> EDITIONS = List.of("2017", "2024");

  private CohortRows() {}

  /** The names of the columns. */
  public static String head() {
    return line(columns().stream().map(Column::name).toList());
  }

  /** One puncture. */
  public static String row(CohortMember member) {
    List<String> cells = new ArrayList<>();
    cells.add(member.id());
    cells.add(member.ageYears().isPresent() ? plain(member.ageYears().getAsDouble()) : "");
    cells.add(member.month().map(YearMonth::toString).orElse(""));
    cells.add(member.diagnosis().orElse(""));
    cells.add(member.gel().bands().word());
    cells.add(member.gel().other().map(BandVerdict::word).orElse(""));
    cells.add(member.needle());
    for (FindingCode code : FindingCode.values()) {
      Double value = member.values().get(code);
      cells.add(value == null ? "" : plain(value));
      cells.add(member.verdicts().getOrDefault(code, Verdict.UNDETERMINED).word());
    }
    EDITIONS.forEach(edition -> cells.add(member.criteria().getOrDefault(edition, "")));
    for (QualityFigure figure : QualityFigure.values()) {
      cells.add(member.quality().getOrDefault(figure, Answer.UNKNOWN).word());
    }
    for (QualityAmount amount : QualityAmount.values()) {
      Double value = member.amounts().get(amount);
      cells.add(value == null ? "" : plain(value));
    }
    return line(cells);
  }

  /** What each column holds, as a table of its own. */
  public static String dictionary() {
    return columns().stream()
        .map(column -> line(List.of(column.name(), column.unit(), column.meaning())))
        .collect(Collectors.joining("", line(List.of("column", "unit", "meaning")), ""));
  }

  private record Column(String name, String unit, String meaning) {}

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("id", "", "the work-up"));
    columns.add(new Column("ageYears", "a", "age of the person"));
    columns.add(new Column("month", "", "month of the puncture"));
    columns.add(new Column("finalDiagnosis", "", "what it turned out to be, as the work-up says"));
    columns.add(
        new Column("bands", "", "what counts: positive, borderline, negative or undetermined"));
    columns.add(new Column("bands.other", "", "the program's or a second reading of the same gel"));
    columns.add(new Column("needle", "", "tip and gauge"));
    for (FindingCode code : FindingCode.values()) {
      columns.add(
          new Column(
              code.code(), code.unit().ucum(), code.term() + "; empty without a single number"));
      columns.add(
          new Column(
              code.code() + ".verdict",
              "",
              code.term() + ": within, above, below, borderline or undetermined"));
    }
    EDITIONS.forEach(
        edition ->
            columns.add(
                new Column(
                    "criteria." + edition,
                    "",
                    "criteria of " + edition + ": met, not-met or undetermined")));
    for (QualityFigure figure : QualityFigure.values()) {
      columns.add(
          new Column("quality." + figure.code(), "", figure.text() + ": yes, no or unknown"));
    }
    for (QualityAmount amount : QualityAmount.values()) {
      columns.add(new Column("amount." + amount.code(), amount.unit(), amount.text()));
    }
    return columns;
  }

  private static String plain(double value) {
    return Double.toString(value);
  }

  static String line(List<String> cells) {
    return cells.stream().map(CohortRows::cell).collect(Collectors.joining(",", "", "\r\n"));
  }

  /**
   * A cell that a spreadsheet takes for text: one that begins like a formula, and is no number,
   * gets an apostrophe before it.
   */
  static String cell(String text) {
    boolean isFormula =
        !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0 && !NUMBER.matcher(text).matches();
    String safe = isFormula ? "'" + text : text;
    boolean isQuoted = QUOTED.chars().anyMatch(sign -> safe.indexOf(sign) >= 0);
    return isQuoted ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }
}
