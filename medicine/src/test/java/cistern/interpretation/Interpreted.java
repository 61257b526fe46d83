package cistern.interpretation;

import cistern.bands.BandCounts;
import cistern.bands.BandReport;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Problem;
import cistern.panel.Panel;
import cistern.panel.PanelText;
import java.util.List;
import java.util.Optional;

/** Interpretations for tests, under the standard facts. */
public final class Interpreted {

  /** The standard facts. */
  public static final Facts FACTS = Facts.standard();

  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);

  private Interpreted() {}

  /** The interpretation of a panel without bands. */
  public static Interpretation of(Panel panel) {
    return of(panel, new BandReport.NotReported());
  }

  /** The interpretation of a panel with bands. */
  public static Interpretation of(Panel panel, BandReport bands) {
    return INTERPRETER.interpret(new Workup("test", panel, bands, List.of()));
  }

  /** The interpretation of a line of results. */
  public static Interpretation of(double age, String results) {
    return of(PanelText.parse(age, results));
  }

  /** Counted bands. */
  public static BandReport bands(int csfOnly, int shared, int serumOnly) {
    return new BandReport.Counted(
        BandCounts.of(csfOnly, shared, serumOnly),
        Optional.empty(),
        BandReport.Origin.UNKNOWN,
        Optional.empty());
  }

  /** The exact value of a finding. */
  public static double value(Interpretation interpretation, FindingCode code) {
    return value(interpretation.findings().get(code));
  }

  /** The exact value of a finding. */
  public static double value(Finding finding) {
    return finding
        .number()
        .orElseThrow(
            () ->
                new AssertionError(
                    finding.code().code() + " has no exact value: " + finding.note()));
  }

  /** The codes of all problems, in order. */
  public static List<String> problems(Interpretation interpretation) {
    return interpretation.problems().stream().map(Problem::code).toList();
  }
}
