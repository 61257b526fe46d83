package cistern.followup;

import cistern.analysis.Puncture;
import cistern.fact.Facts;
import cistern.followup.Comparison.Step;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Compares the punctures of one person under one set of facts. */
public final class Comparisons {

  private static final double SECONDS_PER_DAY = 86_400;

  private final Facts facts;

  private Comparisons(Facts facts) {
    this.facts = facts;
  }

  /** Comparisons under some facts. */
  public static Comparisons of(Facts facts) {
    return new Comparisons(facts);
  }

  /** Why some punctures may not be compared: no person, or not the same one. */
  public static Optional<String> refusal(List<Puncture> punctures) {
    if (punctures.stream().anyMatch(e -> e.person().isEmpty())) {
      return Optional.of("person.id is missing, so nobody can tell that they are of one person");
    }
    long persons = punctures.stream().map(Puncture::person).distinct().count();
    return persons > 1
        ? Optional.of("person.id differs: they are not of one person")
        : Optional.empty();
  }

  /**
   * Punctures of one person, at least two. They are put in order of time when every time is known,
   * else they stay in the order given.
   */
  public Comparison compare(List<Puncture> given) {
    List<Puncture> punctures = new ArrayList<>(given);
    if (given.stream().allMatch(e -> e.at().isPresent())) {
      punctures.sort(Comparator.comparing(e -> e.at().orElseThrow().toInstant()));
    }
    Changes changes = new Changes(facts);
    List<Step> steps = new ArrayList<>();
    for (int i = 1; i < punctures.size(); i++) {
      steps.add(step(punctures.get(i - 1), punctures.get(i), changes));
    }
    boolean isReordered = !punctures.equals(given);
    return new Comparison(
        person(punctures),
        punctures,
        days(punctures.getFirst(), punctures.getLast()),
        steps,
        new Remarks(facts).of(punctures, steps, isReordered));
  }

  private static Optional<String> person(List<Puncture> punctures) {
    Set<Optional<String>> all =
        punctures.stream().map(Puncture::person).collect(Collectors.toSet());
    return all.size() == 1 ? punctures.getFirst().person() : Optional.empty();
  }

  private static Step step(Puncture earlier, Puncture later, Changes changes) {
    return new Step(
        earlier,
        later,
        days(earlier, later),
        changes.check(new Comparability(earlier, later)),
        BandChange.of(earlier.bands(), later.bands()));
  }

  private static OptionalDouble days(Puncture earlier, Puncture later) {
    if (earlier.at().isEmpty() || later.at().isEmpty()) {
      return OptionalDouble.empty();
    }
    Duration apart = Duration.between(earlier.at().get(), later.at().get());
    return OptionalDouble.of(apart.toSeconds() / SECONDS_PER_DAY);
  }
}
