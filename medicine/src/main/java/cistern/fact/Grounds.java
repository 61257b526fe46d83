package cistern.fact;

import java.util.ArrayList;
import java.util.List;

/**
 * What a statement rests on: every source behind it, each with its status.
 *
 * @param citations without repetition, in order of use
 */
public record Grounds(List<Citation> citations) {

  /** Nothing but arithmetic on the measured values. */
  public static final Grounds MEASURED = new Grounds(List.of());

  /**
   * One source.
   *
   * @param source the publication or practice, with the place in it
   * @param status how well what was taken from it is supported
   * @param references the publications in the bibliography
   */
  public record Citation(String source, Status status, List<Reference> references) {

    /** Copies the references. */
    public Citation {
      references = List.copyOf(references);
    }
  }

  /** Copies the citations. */
  public Grounds {
    citations = List.copyOf(citations);
  }

  /** The grounds of one fact. */
  public static Grounds of(Fact fact) {
    return new Grounds(
        List.of(new Citation(fact.citation(), fact.status(), fact.cited().references())));
  }

  /** Both together. */
  public Grounds and(Grounds other) {
    if (citations.isEmpty() || citations.containsAll(other.citations)) {
      return citations.isEmpty() ? other : this;
    }
    List<Citation> all = new ArrayList<>(citations);
    for (Citation citation : other.citations) {
      if (!all.contains(citation)) {
        all.add(citation);
      }
    }
    return new Grounds(all);
  }

  /** The weakest status of all. */
  public Status status() {
    Status weakest = Status.READ;
    for (Citation citation : citations) {
      weakest = weakest.weaker(citation.status());
    }
    return weakest;
  }

  /** The sources without repetition. */
  public List<String> sources() {
    List<String> sources = new ArrayList<>();
    for (Citation citation : citations) {
      if (!sources.contains(citation.source())) {
        sources.add(citation.source());
      }
    }
    return sources;
  }
}
