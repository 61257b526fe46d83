package cistern.report.chart;

import cistern.finding.Finding;
import cistern.report.wording.ValueWords;
import java.util.Optional;

/** A value with its verdict, and a sentence's first letter. */
final class ChartWords {

  private ChartWords() {}

  /** A finding with a value, and its verdict in the trade's word. */
  static Optional<String> judged(String name, Finding finding) {
    if (!finding.hasValue()) {
      return Optional.empty();
    }
    String verdict =
        switch (finding.verdict()) {
          case ABOVE -> "raised";
          case BELOW -> "low";
          case WITHIN -> "normal";
          case BORDERLINE -> "borderline";
          case UNDETERMINED -> "not judged";
        };
    return Optional.of(name + " " + ValueWords.valueWithUnit(finding) + " (" + verdict + ")");
  }

  static String sentence(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
