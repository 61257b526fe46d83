package cistern.report.figure;

import cistern.fact.FactTable;
import cistern.fact.Facts;

/** The numbers that figures need beyond those of the medicine. */
public final class FigureFacts {

  private static final String SAMPLE_KEY = "figure.strip.span";

  private FigureFacts() {}

  /** The table of these numbers. */
  public static FactTable table() {
    return FactTable.read(FigureFacts.class, "figure.tsv");
  }

  /** Some facts and, where they are not among them yet, those of figures. */
  static Facts of(Facts facts) {
    return facts.find(SAMPLE_KEY).isPresent() ? facts : facts.with(table());
  }
}
