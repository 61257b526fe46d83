package cistern.report.look;

import cistern.fact.FactTable;
import cistern.fact.Facts;

/** What figures and pages need beyond the facts of the medicine. */
public final class ReportFacts {

  private static final String SAMPLE_KEY = "figure.strip.span";

  private ReportFacts() {}

  /** The table of these facts. */
  public static FactTable table() {
    return FactTable.read(ReportFacts.class, "report.tsv");
  }

  /** Some facts and, where they are not among them yet, those of reports. */
  public static Facts of(Facts facts) {
    return facts.find(SAMPLE_KEY).isPresent() ? facts : facts.with(table());
  }
}
