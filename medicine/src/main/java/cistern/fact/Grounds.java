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
    List<Citation> all = new ArrayList<>(citations);
    other.citations.stream().filter(c -> !all.contains(c)).forEach(all::add);
    return new Grounds(all);
  }

  /** The weakest status of all. */
  public Status status() {
    return citations.stream().map(Citation::status).reduce(Status.READ, Status::weaker);
  }

  /** The sources without repetition. */
  public List<String> sources() {
    return citations.stream().map(Citation::source).distinct().toList();
  }
}
