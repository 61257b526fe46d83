package cistern.fact;

import java.util.ArrayList;
import java.util.List;

/**
 * What a statement rests on: the weakest status and all sources of the facts behind it.
 *
 * @param status the weakest of all
 * @param sources citations without repetition, in order of use
 */
public record Grounds(Status status, List<String> sources) {

  /** Nothing but arithmetic on the measured values. */
  public static final Grounds MEASURED = new Grounds(Status.READ, List.of());

  /** Copies the sources. */
  public Grounds {
    sources = List.copyOf(sources);
  }

  /** The grounds of one fact. */
  public static Grounds of(Fact fact) {
    return new Grounds(fact.status(), List.of(fact.citation()));
  }

  /** Both together. */
  public Grounds and(Grounds other) {
    List<String> all = new ArrayList<>(sources);
    other.sources.stream().filter(s -> !all.contains(s)).forEach(all::add);
    return new Grounds(status.weaker(other.status), all);
  }
}
