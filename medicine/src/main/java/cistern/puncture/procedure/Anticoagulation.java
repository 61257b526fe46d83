package cistern.puncture.procedure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What bears on bleeding and clotting.
 *
 * @param coagulation as measured
 * @param antithrombotics in use; an empty list when none is taken, empty when nobody asked
 * @param creatinineClearance mL/min
 * @param monthsAgo how long ago an event of the thrombosis questions was
 * @param cha2ds2Vasc the score, when atrial fibrillation is known
 */
public record Anticoagulation(
    Coagulation coagulation,
    Optional<List<Antithrombotic>> antithrombotics,
    OptionalDouble creatinineClearance,
    Map<Question, Double> monthsAgo,
    OptionalDouble cha2ds2Vasc) {

  /** Nothing known. */
  public static final Anticoagulation UNKNOWN =
      new Anticoagulation(
          Coagulation.UNKNOWN,
          Optional.empty(),
          OptionalDouble.empty(),
          Map.of(),
          OptionalDouble.empty());

  /** Copies the collections. */
  public Anticoagulation {
    antithrombotics = antithrombotics.map(List::copyOf);
    monthsAgo = Map.copyOf(monthsAgo);
  }

  /** How many months ago an event was, if stated. */
  public OptionalDouble monthsSince(Question event) {
    Double months = monthsAgo.get(event);
    return months == null ? OptionalDouble.empty() : OptionalDouble.of(months);
  }

  /** The antithrombotics known to be in use. */
  public List<Antithrombotic> inUse() {
    return antithrombotics.orElse(List.of());
  }
}
