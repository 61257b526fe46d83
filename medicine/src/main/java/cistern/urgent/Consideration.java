package cistern.urgent;

import java.util.List;

/**
 * Something to think of.
 *
 * @param code the name in files
 * @param term the name in sentences
 * @param reasonsFor the findings and rules that speak for it, as named in files
 * @param reasonsAgainst the findings that speak against it, as named in files
 * @param next the tests that come next, in words
 */
public record Consideration(
    String code,
    String term,
    List<String> reasonsFor,
    List<String> reasonsAgainst,
    List<String> next) {

  /** Copies the lists. */
  public Consideration {
    reasonsFor = List.copyOf(reasonsFor);
    reasonsAgainst = List.copyOf(reasonsAgainst);
    next = List.copyOf(next);
  }
}
