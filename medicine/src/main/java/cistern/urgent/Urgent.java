package cistern.urgent;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What must be said first about one puncture.
 *
 * @param all by tier, then in the order of the catalogue
 */
public record Urgent(List<Urgency> all) {

  /** Nothing urgent. */
  public static final Urgent NONE = new Urgent(List.of());

  /** Copies the list. */
  public Urgent {
    all = List.copyOf(all);
  }

  /** These and more, the gravest tier first, in the order given within one. */
  public Urgent with(List<Urgency> more) {
    return new Urgent(
        Stream.concat(all.stream(), more.stream())
            .sorted(Comparator.comparing(Urgency::tier))
            .toList());
  }

  /** These without some of them. */
  public Urgent without(List<Urgency> some) {
    Set<String> codes = some.stream().map(Urgency::code).collect(Collectors.toSet());
    return new Urgent(all.stream().filter(u -> !codes.contains(u.code())).toList());
  }

  /** The rules that hold. */
  public List<Urgency> holding() {
    return all.stream().filter(Urgency::holds).toList();
  }

  /** The rules that hold and silence what supports MS until somebody answers them. */
  public List<Urgency> open() {
    return all.stream().filter(Urgency::isOpen).toList();
  }

  /** What holds after the puncture and nobody has answered: no rule of the catalogue says it. */
  public List<Urgency> unansweredAfterwards() {
    return holding().stream()
        .filter(u -> !UrgentRules.codes().contains(u.code()) && u.answered().isEmpty())
        .toList();
  }

  /** Whether a rule of the first tier, or one for infection of the second, is open. */
  public boolean isOpen() {
    return all.stream().anyMatch(Urgency::isOpen);
  }

  /** Whether a rule for infection is open. */
  public boolean isInfectionOpen() {
    return open().stream().anyMatch(Urgency::isInfection);
  }

  /** Whether another rule of the first tier is open. */
  public boolean isEmergencyOpen() {
    return open().stream().anyMatch(u -> !u.isInfection());
  }

  /** The rule of a code, where it holds. */
  public Optional<Urgency> find(String code) {
    for (Urgency urgency : all) {
      if (urgency.holds() && urgency.code().equals(code)) {
        return Optional.of(urgency);
      }
    }
    return Optional.empty();
  }

  /** Whether the rule of a code holds. */
  public boolean holds(String code) {
    return find(code).isPresent();
  }
}
