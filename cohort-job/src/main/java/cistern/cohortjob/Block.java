package cistern.cohortjob;

import cistern.exchange.intake.CohortPart;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * Some lines of a cohort's input.
 *
 * @param at where its first line stands
 * @param end the line of its division that comes after it
 * @param name of the file
 * @param heading of the table with its line break; empty where each line is a work-up
 * @param text its lines
 * @param isOpen whether a cell of its last row is not closed: its line break fell on the border of
 *     two divisions
 */
record Block(LinePlace at, long end, String name, String heading, String text, boolean isOpen)
    implements Serializable {

  /** Whether it holds rows of a table. */
  boolean isTable() {
    return !heading.isEmpty();
  }

  /**
   * What the readers of work-ups take: all rows of a table together, or each line. Their places
   * count from the beginning of the division.
   */
  List<CohortPart> parts() {
    if (isTable()) {
      return List.of(new CohortPart(name, heading + text, at.line() - 1));
    }
    List<CohortPart> parts = new ArrayList<>();
    long line = at.line();
    for (String one : text.split("\n", -1)) {
      if (!one.isBlank()) {
        parts.add(new CohortPart(name, one, line));
      }
      line++;
    }
    return parts;
  }
}
