package cistern.report.figure;

import cistern.finding.Finding;
import cistern.report.wording.ValueWords;
import java.util.List;

/** A row of the strip of values in words. */
final class RulerText {

  private RulerText() {}

  /** Value, interval, limit and verdict in a sentence. */
  static String of(Finding finding) {
    if (!finding.hasValue()) {
      return finding.code().term() + ": undetermined; " + finding.note();
    }
    String interval = ValueWords.interval(finding);
    return "%s %s%s, %s: %s"
        .formatted(
            finding.code().term(),
            ValueWords.valueWithUnit(finding),
            interval.isEmpty() ? "" : " (95 % interval " + interval + ")",
            finding.limits().isKnown() ? "limit " + ValueWords.limit(finding) : "no limit known",
            finding.verdict().word());
  }

  /** The same in cells. */
  static FigureTable table(Finding finding) {
    return new FigureTable(
        List.of("finding", "value", "95 % interval", "limit", "verdict"),
        List.of(
            List.of(
                finding.code().term(),
                ValueWords.valueWithUnit(finding),
                ValueWords.interval(finding),
                ValueWords.limit(finding),
                finding.verdict().word())));
  }
}
