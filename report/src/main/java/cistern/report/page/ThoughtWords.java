package cistern.report.page;

import cistern.urgent.Alerts;
import cistern.urgent.Consideration;
import java.util.List;

/** What to think of, most specific first, each with what comes next. */
final class ThoughtWords {

  private ThoughtWords() {}

  /** Nothing where MS alone is left: that is what was asked. */
  static List<String> of(Alerts alerts) {
    boolean isMsAlone = alerts.thinkOf().stream().allMatch(c -> c.code().equals("ms"));
    return isMsAlone ? List.of() : alerts.thinkOf().stream().map(ThoughtWords::of).toList();
  }

  private static String of(Consideration consideration) {
    String term = consideration.term();
    return Character.toUpperCase(term.charAt(0))
        + term.substring(1)
        + ". Next: "
        + String.join("; ", consideration.next())
        + ".";
  }
}
