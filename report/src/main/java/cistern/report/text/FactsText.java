package cistern.report.text;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.report.paper.Wrapped;
import java.util.stream.Collectors;

/** The facts in force as plain text. */
public final class FactsText {

  private FactsText() {}

  /** One block a fact: key, value, unit, status, source; a changed one shows both values. */
  public static String write(Facts facts) {
    String head =
        "Facts in force (%s; %s). For research and education. Not a medical device.\n\n"
            .formatted(
                facts.version(), facts.policy().map(p -> "policy " + p).orElse("no local policy"));
    return head + facts.all().stream().map(FactsText::line).collect(Collectors.joining());
  }

  private static String line(Fact fact) {
    String changed =
        fact.standard()
            .map(s -> "  changed by local policy, standard " + s.toText() + " " + fact.unit())
            .orElse("");
    String value = (fact.value().toText() + " " + fact.unit()).strip();
    return "%-52s %-28s %-16s%s\n".formatted(fact.key(), value, fact.status().word(), changed)
        + Wrapped.of("      ", fact.citation());
  }
}
