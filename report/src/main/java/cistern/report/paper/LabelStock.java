package cistern.report.paper;

import cistern.fact.Facts;
import cistern.report.look.ReportFacts;

/**
 * A sheet of self-adhesive labels; all lengths in millimetres.
 *
 * @param columns labels beside each other
 * @param width of a label
 * @param height of a label
 * @param gap between two columns
 * @param left from the edge of the sheet to the first column
 * @param top from the edge of the sheet to the first row
 */
public record LabelStock(
    int columns, double width, double height, double gap, double left, double top) {

  /** The stock that the local policy names. */
  public static LabelStock of(Facts facts) {
    Facts all = ReportFacts.of(facts);
    return new LabelStock(
        (int) all.number("label.columns"),
        all.number("label.width"),
        all.number("label.height"),
        all.number("label.gap"),
        all.number("label.left"),
        all.number("label.top"));
  }

  /** The sheet as a style: its margins end where the first label begins. */
  public String toStyle() {
    return "@page{margin:%smm 0 0 %smm}".formatted(top, left);
  }
}
