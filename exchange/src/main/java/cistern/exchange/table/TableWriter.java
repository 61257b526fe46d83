package cistern.exchange.table;

import cistern.bands.BandCounts;
import cistern.bands.BandReport;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Workup;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes work-ups as a table: a heading, then a row each; values in canonical units. A text that a
 * spreadsheet would take for a formula is written with an apostrophe before it.
 */
public final class TableWriter {

  private final boolean hasFindings;

  private TableWriter(boolean hasFindings) {
    this.hasFindings = hasFindings;
  }

  /** A writer of results, with or without what was made of them. */
  public static TableWriter of(boolean hasFindings) {
    return new TableWriter(hasFindings);
  }

  private static Stream<Sample> samples() {
    return Stream.of(Analyte.values())
        .flatMap(a -> Stream.of(Compartment.values()).map(c -> new Sample(a, c)));
  }

  /** The row of headings, with its line break. */
  public String heading() {
    List<String> names =
        new ArrayList<>(List.of("id", "person.id", "ageYears", "sex", "csf.at", "serum.at"));
    samples().forEach(sample -> names.add(sample.code()));
    names.addAll(List.of("bands.csfOnly", "bands.shared", "bands.serumOnly"));
    if (hasFindings) {
      Stream.of(FindingCode.values())
          .forEach(code -> names.addAll(List.of(output(code), code.code() + ".verdict")));
    }
    return String.join(",", names) + "\n";
  }

  /** A finding of the name of an analyte is told from the analyte by its fluid. */
  private static String output(FindingCode code) {
    return code.code();
  }

  /** One row, with its line break. */
  public String row(Interpretation interpretation) {
    Workup workup = interpretation.workup();
    List<String> cells = new ArrayList<>();
    cells.add(text(workup.id()));
    cells.add(text(workup.panel().person().id().orElse("")));
    cells.add(
        workup.panel().person().ageYears().isPresent()
            ? number(workup.panel().person().ageYears().getAsDouble())
            : "");
    cells.add(text(workup.panel().person().sex().orElse("")));
    cells.add(workup.panel().csf().at().map(OffsetDateTime::toString).orElse(""));
    cells.add(workup.panel().serum().at().map(OffsetDateTime::toString).orElse(""));
    samples().forEach(s -> cells.add(workup.panel().find(s).map(m -> value(m.value())).orElse("")));
    BandCounts counts = counts(workup.bands());
    Stream.of(counts.csfOnly(), counts.shared(), counts.serumOnly())
        .forEach(count -> cells.add(count(count)));
    if (hasFindings) {
      interpretation.findings().all().forEach(finding -> finding(finding, cells));
    }
    return cells.stream().map(TableWriter::quoted).collect(Collectors.joining(",")) + "\n";
  }

  private static BandCounts counts(BandReport report) {
    return switch (report) {
      case BandReport.Counted counted -> counted.counts();
      case BandReport.ReadFromGel read -> read.counts();
      case BandReport.GelNamed named ->
          named.edit().map(BandReport.Counted::counts).orElse(BandCounts.NONE);
      case BandReport.NotReported none -> BandCounts.NONE;
      case BandReport.Patterned patterned -> BandCounts.NONE;
      case BandReport.Concluded concluded -> BandCounts.NONE;
    };
  }

  private static String count(OptionalInt count) {
    return count.isPresent() ? Integer.toString(count.getAsInt()) : "";
  }

  private static String value(Interval value) {
    if (value.isExact()) {
      return number(value.exactly());
    }
    if (Double.isInfinite(value.upper())) {
      return ">" + number(value.lower());
    }
    return value.lower() <= 0
        ? "<" + number(value.upper())
        : number(value.lower()) + " to " + number(value.upper());
  }

  private static void finding(Finding finding, List<String> cells) {
    cells.add(finding.value().map(TableWriter::value).orElse(""));
    cells.add(finding.verdict().word());
  }

  private static String number(double value) {
    String plain = new BigDecimal(Double.toString(value)).toPlainString();
    return plain.endsWith(".0") ? plain.substring(0, plain.length() - 2) : plain;
  }

  /** A text that no spreadsheet computes with. */
  private static String text(String text) {
    boolean isFormula = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
    return isFormula ? "'" + text : text;
  }

  private static String quoted(String cell) {
    return cell.matches("(?s).*[\",\n\r].*") ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell;
  }
}
