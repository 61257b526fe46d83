package cistern.fact;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Where a fact comes from.
 *
 * @param words as a footnote says it
 * @param references the publications behind it; empty where nothing was looked up, and for local
 *     policy
 */
public record Provenance(String words, List<Reference> references) {

  private static final String VIA = " via ";

  /** Copies the references. */
  public Provenance {
    references = List.copyOf(references);
  }

  /** A source outside the bibliography: that of local policy. */
  public static Provenance ofWords(String words) {
    return new Provenance(words, List.of());
  }

  /**
   * From the cell of a table: keys of the bibliography with {@code ;} between them, {@code a via b}
   * where {@code a} was seen in {@code b}.
   *
   * @throws IllegalStateException when a key is unknown, or missing where the status asks for one
   */
  public static Provenance parse(String cell, Status status) {
    List<Reference> references = new ArrayList<>();
    String named =
        cell.isBlank()
            ? ""
            : List.of(cell.split(";")).stream()
                .map(part -> named(part.strip(), references))
                .collect(Collectors.joining("; "));
    return new Provenance(words(named, status), references);
  }

  private static String named(String part, List<Reference> references) {
    List<String> texts = new ArrayList<>();
    for (String key : part.split(VIA, -1)) {
      Reference reference = Bibliography.standard().get(key.strip());
      references.add(reference);
      texts.add(reference.toText());
    }
    return String.join(", as given in ", texts);
  }

  private static String words(String named, Status status) {
    return switch (status) {
      case PROJECT_RULE -> named.isEmpty() ? "project rule" : "project rule; compare " + named;
      case COMMON_PRACTICE ->
          named.isEmpty() ? "common practice, no source" : "common practice; compare " + named;
      case MEMORY -> named.isEmpty() ? "from memory" : "from memory, to confirm in " + named;
      case READ, DERIVED, SECOND_HAND, LOCAL -> {
        if (named.isEmpty()) {
          throw new IllegalStateException("a fact that is " + status.word() + " has a reference");
        }
        yield named;
      }
    };
  }
}
