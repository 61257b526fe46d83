package cistern.cohortjob;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.spark.sql.Row;

/** A row with types as the row of a table (RFC 4180) that the readers of tables take. */
final class RowText {

  private RowText() {}

  /** The cells of a row; missing ones are empty. */
  static String line(Row row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.length(); i++) {
      cells.add(row.isNullAt(i) ? "" : text(row.get(i)));
    }
    return cells(cells);
  }

  /** Names of columns, with their line break. */
  static String line(List<String> names) {
    return cells(names) + "\n";
  }

  /** Numbers in full digits, with a point; times in UTC. */
  private static String text(Object value) {
    return switch (value) {
      case Double number when Double.isFinite(number) -> plain(number.toString());
      case Float number when Float.isFinite(number) -> plain(number.toString());
      case BigDecimal number -> number.toPlainString();
      case Timestamp time -> time.toInstant().toString();
      default -> value.toString();
    };
  }

  private static String plain(String number) {
    return new BigDecimal(number).stripTrailingZeros().toPlainString();
  }

  private static String cells(List<String> cells) {
    return cells.stream()
        .map(c -> c.matches("(?s).*[\",\\r\\n].*") ? '"' + c.replace("\"", "\"\"") + '"' : c)
        .collect(Collectors.joining(","));
  }
}
