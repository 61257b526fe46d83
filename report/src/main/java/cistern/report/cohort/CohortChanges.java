package cistern.report.cohort;

import java.util.List;
import java.util.stream.Collectors;

/** What is said of a cohort now and was said otherwise, as a table. */
public final class CohortChanges {

  private CohortChanges() {}

  /**
   * A verdict that is not what an earlier table says.
   *
   * @param workup its id
   * @param column of the table
   * @param from what the earlier table says
   * @param to what is said now
   * @param why what made the difference
   */
  public record Changed(String workup, String column, String from, String to, String why) {}

  /** The table, one row a change. */
  public static String toTable(List<Changed> changes) {
    return changes.stream()
        .map(c -> CohortRows.line(List.of(c.workup(), c.column(), c.from(), c.to(), c.why())))
        .collect(
            Collectors.joining(
                "", CohortRows.line(List.of("id", "column", "before", "now", "why")), ""));
  }
}
