package cistern.checks;

import java.util.List;

/**
 * A row of the table of outside checks: a line of four cells between tabs in a file of its own, so
 * that tests that run side by side do not write into each other.
 *
 * @param what what was compared
 * @param source where the expected numbers come from
 * @param tolerance the largest deviation that passes
 * @param result what came out
 */
record TableRow(String what, String source, String tolerance, String result) {

  private static final int CELLS = 4;

  TableRow {
    checkCell("what", what);
    checkCell("source", source);
    checkCell("tolerance", tolerance);
    checkCell("result", result);
  }

  static void checkCell(String name, String cell) {
    if (cell.isBlank() || cell.chars().anyMatch(Character::isISOControl)) {
      throw new IllegalArgumentException(name + " must be one line of text");
    }
  }

  static TableRow parse(String line) {
    List<String> cells = List.of(line.strip().split("\t", -1));
    if (cells.size() != CELLS) {
      throw new IllegalArgumentException("a row has four cells, this one " + cells.size());
    }
    return new TableRow(cells.get(0), cells.get(1), cells.get(2), cells.get(3));
  }

  /** Names the file after what and source, so that a second run replaces the row of the first. */
  String toFileName() {
    return Fingerprint.of(what + "\t" + source) + ".tsv";
  }

  String toLine() {
    return String.join("\t", what, source, tolerance, result) + "\n";
  }

  String toMarkdown() {
    return "| "
        + String.join(
            " | ", List.of(toCell(what), toCell(source), toCell(tolerance), toCell(result)))
        + " |\n";
  }

  private static String toCell(String text) {
    return text.replace("|", "\\|");
  }
}
