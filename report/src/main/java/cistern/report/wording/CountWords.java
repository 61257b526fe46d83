package cistern.report.wording;

import cistern.differential.CountTable;
import cistern.differential.CountTable.Row;
import cistern.differential.Disease;
import cistern.differential.Proportion;
import cistern.finding.Printed;
import java.util.ArrayList;
import java.util.List;

/** The published counts behind a disease, as the cells of a table. */
public final class CountWords {

  /** The headings of the columns. */
  public static final List<String> HEADINGS =
      List.of("disease", "finding", "series", "count", "share (95 % interval)");

  /** What the table shows. */
  public static final String CAPTION =
      "Published counts of what was heard, and what is believed after them: no count weighs more"
          + " than its effective number, and series that contradict each other weigh little";

  private static final double PER_CENT = 100;

  private CountWords() {}

  /** A row for every series, and one for what is believed after them. */
  public static List<List<String>> rows(CountTable table) {
    String disease = Disease.parse(table.group()).map(Disease::term).orElse("all diseases");
    List<List<String>> rows = new ArrayList<>();
    table.rows().forEach(r -> rows.add(row(disease, table.term(), r)));
    rows.add(
        List.of(
            disease,
            table.term(),
            "believed",
            "weighs " + Printed.decimals(table.effective(), 0),
            share(table.mean(), table.interval95())));
    return rows;
  }

  private static List<String> row(String disease, String finding, Row row) {
    return List.of(
        disease,
        finding,
        String.join("; ", row.grounds().sources()),
        "%s of %s"
            .formatted(
                Printed.decimals(row.count().positive(), 0), Printed.decimals(row.count().of(), 0)),
        share(row.count().share(), row.interval95()));
  }

  private static String share(double share, Proportion.Ends ends) {
    return "%s %% (%s to %s)"
        .formatted(percent(share), percent(ends.lower()), percent(ends.upper()));
  }

  private static String percent(double share) {
    return Printed.decimals(share * PER_CENT, 0);
  }
}
