package cistern.report.paper;

import cistern.fact.Grounds;
import cistern.fact.Grounds.Citation;
import cistern.fact.Reference;
import cistern.fact.Status;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The sources of a paper, numbered in the order in which they are first named. */
final class Sources {

  private final Map<Citation, String> numbers = new LinkedHashMap<>();

  /**
   * One source.
   *
   * @param number by which it is named
   * @param text of the source, with what makes it weaker than a publication that was read
   * @param references the publications that the text names
   */
  record Source(String number, String text, List<Reference> references) {}

  /** The numbers of some grounds. */
  List<String> of(Grounds grounds) {
    return grounds.citations().stream()
        .map(c -> numbers.computeIfAbsent(c, n -> String.valueOf(numbers.size() + 1)))
        .toList();
  }

  /** All that were named. */
  List<Source> all() {
    List<Source> all = new ArrayList<>();
    numbers.forEach(
        (citation, number) ->
            all.add(
                new Source(
                    number,
                    citation.source() + weakness(citation.status()),
                    citation.references())));
    return all;
  }

  private static String weakness(Status status) {
    return switch (status) {
      case READ -> "";
      case DERIVED -> " (calculated)";
      case SECOND_HAND -> " (second-hand)";
      case LOCAL -> " (local policy)";
      case COMMON_PRACTICE -> " (common practice, no source)";
      case PROJECT_RULE -> " (project rule)";
      case MEMORY -> " (unconfirmed: recalled, not checked against the source)";
    };
  }
}
