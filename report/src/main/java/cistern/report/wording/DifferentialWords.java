package cistern.report.wording;

import cistern.differential.Argument;
import cistern.differential.Disease;
import cistern.redflag.RedFlag;
import cistern.weighing.NextItem;
import java.util.List;
import java.util.stream.Collectors;

/** Diseases, red flags and next steps, a sentence each. */
public final class DifferentialWords {

  private DifferentialWords() {}

  /** A disease: what speaks for and against it. */
  public static String of(Argument argument) {
    return "%s%s%s"
        .formatted(
            argument.disease().term(),
            reasons(": for it, ", argument.reasonsFor()),
            reasons(": against it, ", argument.reasonsAgainst()));
  }

  private static String reasons(String title, List<String> reasons) {
    return reasons.isEmpty() ? "" : title + String.join(" and ", reasons);
  }

  /** A red flag with what to think of. */
  public static String of(RedFlag flag) {
    return "%s To think of: %s."
        .formatted(
            flag.text(),
            flag.suggests().stream().map(Disease::term).collect(Collectors.joining(", ")));
  }

  /** A missing item with what it could change and what it costs. */
  public static String of(NextItem item) {
    return "%s (could change: %s; %s)"
        .formatted(
            item.text(),
            item.changes().stream()
                .map(
                    change ->
                        switch (change) {
                          case "criteria" -> "the criteria";
                          case "answer" -> "the answer";
                          default -> "an urgent finding";
                        })
                .collect(Collectors.joining(", ")),
            item.burden().word().replace('-', ' '));
  }
}
