package cistern.exchange.table;

import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import cistern.measurement.Sample;
import java.io.IOException;
import java.io.Serial;
import java.io.Serializable;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A table of concentrations in canonical units under the headings {@code <analyte>.<fluid>}, read
 * into columns of numbers. Nothing else of it is read, and no unit is guessed.
 */
public final class NumberTable implements Serializable {

  @Serial private static final long serialVersionUID = 1L;

  private static final String NUMBER = "a number that is not negative, a bound, or empty";

  private final char sign;
  private final ArrayList<String> codes = new ArrayList<>();
  private final int[] positions;

  private NumberTable(char sign, List<String> headings, List<Sample> samples) {
    this.sign = sign;
    samples.forEach(sample -> codes.add(sample.code()));
    positions = codes.stream().mapToInt(headings::indexOf).toArray();
  }

  /**
   * The table under a line of headings.
   *
   * @param heading the first line of the table
   * @param samples the columns that are read; one that the table lacks is empty
   */
  public static NumberTable of(String heading, List<Sample> samples) {
    char sign =
        Stream.of('\t', ';', ',')
            .max(Comparator.comparingLong(s -> heading.chars().filter(c -> c == s).count()))
            .orElseThrow();
    List<String> headings =
        cells(heading.replaceFirst("^\ufeff", ""), sign).stream().map(String::strip).toList();
    return new NumberTable(sign, headings, samples);
  }

  /** The names of the columns that the table has, of those that are read. */
  public List<String> found() {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < positions.length; i++) {
      if (positions[i] >= 0) {
        found.add(codes.get(i));
      }
    }
    return found;
  }

  /**
   * Some rows as columns.
   *
   * @param columns by the name of the sample; NaN where a cell is empty or only a bound
   * @param problems of rows that are left out
   * @param refused how many those are
   */
  public record Columns(Map<String, double[]> columns, List<InputProblem> problems, int refused) {}

  /**
   * Reads rows.
   *
   * @param lines a row each
   * @param rowsBefore how many lines of the file stand before them
   */
  public Columns read(List<String> lines, long rowsBefore) {
    double[][] columns = new double[positions.length][lines.size()];
    List<InputProblem> problems = new ArrayList<>();
    int rows = 0;
    int refused = 0;
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).isBlank()) {
        continue;
      }
      int bad = row(lines.get(i), columns, rows);
      if (bad < 0) {
        rows++;
      } else {
        refused++;
        String place = "row " + (rowsBefore + i + 1) + ", " + codes.get(bad);
        problems.add(InputProblem.of(InputTrouble.ILL_FORMED, place, NUMBER));
      }
    }
    Map<String, double[]> byCode = new HashMap<>();
    for (int i = 0; i < positions.length; i++) {
      byCode.put(codes.get(i), Arrays.copyOf(columns[i], rows));
    }
    return new Columns(byCode, problems, refused);
  }

  /** Reads one row; the first column that is not a number, −1 when all are. */
  private int row(String line, double[][] columns, int row) {
    List<String> cells = cells(line, sign);
    for (int i = 0; i < positions.length; i++) {
      Optional<Double> value =
          positions[i] < 0 || positions[i] >= cells.size()
              ? Optional.of(Double.NaN)
              : number(cells.get(positions[i]).strip());
      if (value.isEmpty()) {
        return i;
      }
      columns[i][row] = value.get();
    }
    return -1;
  }

  private static Optional<Double> number(String cell) {
    if (cell.isEmpty() || cell.charAt(0) == '<' || cell.charAt(0) == '>') {
      return Optional.of(Double.NaN);
    }
    try {
      double value = Double.parseDouble(cell);
      return Double.isFinite(value) && value >= 0 ? Optional.of(value) : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  private static List<String> cells(String line, char sign) {
    if (line.indexOf('"') >= 0) {
      try {
        return new CsvRecords(new StringReader(line), sign)
            .next()
            .map(CsvRecords.CsvRecord::cells)
            .orElse(List.of());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int to = line.indexOf(sign); to >= 0; to = line.indexOf(sign, from)) {
      cells.add(line.substring(from, to));
      from = to + 1;
    }
    cells.add(line.substring(from));
    return cells;
  }
}
