package cistern.report.text;

import cistern.fact.Grounds;
import cistern.fact.Grounds.Citation;
import cistern.fact.Status;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** The sources of a report, numbered in the order in which they are first named. */
public final class SourceNotes {

  private final Map<Citation, Integer> numbers = new LinkedHashMap<>();

  /** The numbers of some grounds, {@code [1,3]}, with a star where they are weaker than read. */
  public String mark(Grounds grounds) {
    if (grounds.citations().isEmpty()) {
      return "";
    }
    String all =
        grounds.citations().stream()
            .map(c -> String.valueOf(numbers.computeIfAbsent(c, n -> numbers.size() + 1)))
            .collect(Collectors.joining(","));
    return "[" + all + "]" + (grounds.status() == Status.READ ? "" : "*");
  }

  /** One line a source, with its status where it is weaker than read. */
  public String toText() {
    String lines =
        numbers.entrySet().stream()
            .map(e -> line(e.getValue(), e.getKey()))
            .collect(Collectors.joining());
    boolean isAnyWeak = numbers.keySet().stream().anyMatch(c -> c.status() != Status.READ);
    return lines
        + (isAnyWeak
            ? Wrapped.of("  ", "* rests on something weaker than a publication that was read")
            : "");
  }

  private static String line(int number, Citation citation) {
    String weak = citation.status() == Status.READ ? "" : " * " + citation.status().word();
    return Wrapped.of("  [%d] ".formatted(number), citation.source() + weak);
  }
}
