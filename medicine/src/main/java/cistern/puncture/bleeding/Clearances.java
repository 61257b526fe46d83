package cistern.puncture.bleeding;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.PuncturedPerson.Kidney;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Creatinine clearance by Cockcroft and Gault with the actual weight, (140 − age)·weight·k/(72·
 * creatinine), creatinine in mg/dL, k 1 for men and 0.85 for women; a stated clearance counts
 * before a computed one.
 */
public final class Clearances {

  private static final String KEY = "clearance.";

  private final Facts facts;

  private Clearances(Facts facts) {
    this.facts = facts;
  }

  /** The formula and its thresholds under some facts. */
  public static Clearances of(Facts facts) {
    return new Clearances(facts);
  }

  /** The clearance of a person for a planned puncture. */
  public Clearance check(Before before, PuncturedPerson person) {
    OptionalDouble stated = before.anticoagulation().creatinineClearance();
    if (stated.isPresent()) {
      return known(stated.getAsDouble(), "as stated");
    }
    List<String> missing = missing(person);
    if (!missing.isEmpty()) {
      return unknown(String.join(", ", missing) + " missing");
    }
    if (person.ageYears().getAsDouble() < facts.number(KEY + "adult-from")) {
      return unknown("the formula is for adults");
    }
    if (isOld(person.kidney(), before.times().plannedAt())) {
      return unknown("the creatinine is older than three months");
    }
    double value = cockcroftGault(person);
    return value > 0
        ? known(value, "computed (Cockcroft–Gault)" + undated(person.kidney()))
        : unknown("the formula does not reach this age");
  }

  private double cockcroftGault(PuncturedPerson person) {
    boolean isFemale = person.female().isYes();
    double creatinine =
        person.kidney().creatinine().orElseThrow() / facts.number(KEY + "micromole-per-milligram");
    return (facts.number(KEY + "age-base") - person.ageYears().orElseThrow())
        * person.kidney().weightKg().orElseThrow()
        * facts.number(KEY + (isFemale ? "women" : "men"))
        / (facts.number(KEY + "divisor") * creatinine);
  }

  private static List<String> missing(PuncturedPerson person) {
    return java.util.stream.Stream.of(
            person.ageYears().isPresent() ? "" : "age",
            person.female().isKnown() ? "" : "sex",
            person.kidney().weightKg().isPresent() ? "" : "weight",
            person.kidney().creatinine().isPresent() ? "" : "creatinine")
        .filter(name -> !name.isEmpty())
        .toList();
  }

  private boolean isOld(Kidney kidney, Optional<OffsetDateTime> plannedAt) {
    long months = Math.round(facts.number(KEY + "creatinine.months"));
    return kidney.takenAt().isPresent()
        && plannedAt.isPresent()
        && kidney.takenAt().get().plusMonths(months).isBefore(plannedAt.get());
  }

  private static String undated(Kidney kidney) {
    return kidney.takenAt().isPresent() ? "" : ", the date of the creatinine is not recorded";
  }

  private Clearance known(double value, String origin) {
    double reach = facts.number(KEY + "near");
    List<Double> near =
        facts.keys(KEY + "threshold.").stream()
            .map(key -> facts.fact(key).value())
            .flatMap(
                v ->
                    v instanceof FactValue.Figure figure
                        ? java.util.stream.Stream.of(figure.value())
                        : java.util.stream.Stream.empty())
            .filter(threshold -> Math.abs(threshold - value) <= reach)
            .toList();
    return new Clearance(OptionalDouble.of(value), origin, near);
  }

  private static Clearance unknown(String why) {
    return new Clearance(OptionalDouble.empty(), why, List.of());
  }
}
