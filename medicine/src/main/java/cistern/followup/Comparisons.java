package cistern.followup;

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
  public static Optional<String> refusal(List<Episode> episodes) {
    if (episodes.stream().anyMatch(e -> e.person().isEmpty())) {
      return Optional.of("person.id is missing, so nobody can tell that they are of one person");
    }
    long persons = episodes.stream().map(Episode::person).distinct().count();
    return persons > 1
        ? Optional.of("person.id differs: they are not of one person")
        : Optional.empty();
  }

  /**
   * Punctures of one person, at least two. They are put in order of time when every time is known,
   * else they stay in the order given.
   */
  public Comparison compare(List<Episode> given) {
    List<Episode> episodes = new ArrayList<>(given);
    if (given.stream().allMatch(e -> e.at().isPresent())) {
      episodes.sort(Comparator.comparing(e -> e.at().orElseThrow().toInstant()));
    }
    Changes changes = new Changes(facts);
    List<Step> steps = new ArrayList<>();
    for (int i = 1; i < episodes.size(); i++) {
      steps.add(step(episodes.get(i - 1), episodes.get(i), changes));
    }
    boolean isReordered = !episodes.equals(given);
    return new Comparison(
        person(episodes),
        episodes,
        days(episodes.getFirst(), episodes.getLast()),
        steps,
        new Remarks(facts).of(episodes, steps, isReordered));
  }

  private static Optional<String> person(List<Episode> episodes) {
    Set<Optional<String>> all = episodes.stream().map(Episode::person).collect(Collectors.toSet());
    return all.size() == 1 ? episodes.getFirst().person() : Optional.empty();
  }

  private static Step step(Episode earlier, Episode later, Changes changes) {
    return new Step(
        earlier,
        later,
        days(earlier, later),
        changes.check(new Comparability(earlier, later)),
        BandChange.of(earlier.bands(), later.bands()));
  }

  private static OptionalDouble days(Episode earlier, Episode later) {
    if (earlier.at().isEmpty() || later.at().isEmpty()) {
      return OptionalDouble.empty();
    }
    Duration apart = Duration.between(earlier.at().get(), later.at().get());
    return OptionalDouble.of(apart.toSeconds() / SECONDS_PER_DAY);
  }
}
