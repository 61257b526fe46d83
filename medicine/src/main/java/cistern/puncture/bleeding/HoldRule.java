package cistern.puncture.bleeding;

import cistern.fact.Fact;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.fact.Status;
import cistern.puncture.procedure.DoseClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One row of one guideline: a drug, a dose class and a range of clearances with what it asks for.
 * Numbers recalled from memory are not read here: such a row asks.
 *
 * @param guideline the guideline's code
 * @param drug the drug's code
 * @param dose the dose class it speaks of, {@code any} for all
 * @param band the clearances it speaks of
 * @param hold what it asks before
 * @param conditions what it asks beside or instead
 * @param restart hours to the next dose
 * @param restartTraumatic the same after a bloody tap, where it differs
 * @param grounds what the row rests on
 */
record HoldRule(
    String guideline,
    String drug,
    String dose,
    ClearanceBand band,
    Hold hold,
    List<Condition> conditions,
    Optional<Hours> restart,
    Optional<Hours> restartTraumatic,
    Grounds grounds) {

  private static final String TABLE = "antithrombotic.";
  private static final String RULE = ".rule";

  HoldRule {
    conditions = List.copyOf(conditions);
  }

  /** Every row in the order of the table. */
  static List<HoldRule> all(Facts facts) {
    return facts.keys(TABLE).stream()
        .filter(key -> key.endsWith(RULE))
        .map(key -> read(facts, key.substring(0, key.length() - RULE.length())))
        .toList();
  }

  private static HoldRule read(Facts facts, String row) {
    String[] names = row.split("\\.", -1);
    Row cells = new Row(facts, row);
    ClearanceBand band =
        new ClearanceBand(
            cells.number("creatinine-clearance-from"),
            cells.number("creatinine-clearance-over"),
            cells.number("creatinine-clearance-up-to"),
            cells.number("creatinine-clearance-below"));
    return new HoldRule(
        names[1],
        names[2],
        names[3],
        band,
        cells.hold(),
        cells.conditions(),
        cells.hours("restart"),
        cells.hours("restart-traumatic"),
        cells.grounds());
  }

  /** Whether anything before a puncture was read in it. */
  boolean isRead() {
    return !(hold instanceof Hold.NotRead || hold instanceof Hold.RestartOnly);
  }

  boolean isFor(DoseClass given) {
    return given == DoseClass.UNKNOWN || dose.equals("any") || dose.equals(given.code());
  }

  boolean isFor(Clearance clearance) {
    return clearance.isWithin(band);
  }

  /**
   * The cells of one row.
   *
   * @param facts where they stand
   * @param row the first part of their keys
   */
  private record Row(Facts facts, String row) {

    OptionalDouble number(String cell) {
      Optional<Fact> fact = facts.find(row + "." + cell);
      if (fact.isEmpty() || fact.get().status() == Status.MEMORY) {
        return OptionalDouble.empty();
      }
      return switch (fact.get().value()) {
        case FactValue.Figure figure -> OptionalDouble.of(figure.value());
        case FactValue.Word asked -> OptionalDouble.empty();
        case FactValue.Unit never -> OptionalDouble.empty();
      };
    }

    boolean has(String cell) {
      return facts.find(row + "." + cell).isPresent();
    }

    Optional<Hours> hours(String cell) {
      OptionalDouble least = number(cell + "-lower");
      OptionalDouble most = number(cell + "-upper");
      if (least.isEmpty() && most.isEmpty()) {
        return Optional.empty();
      }
      double one = least.isPresent() ? least.getAsDouble() : most.getAsDouble();
      double other = most.isPresent() ? most.getAsDouble() : one;
      return Optional.of(new Hours(Math.min(one, other), Math.max(one, other)));
    }

    Hold hold() {
      String word = facts.word(row + RULE);
      Optional<Hours> hours = hours("hold");
      return switch (word) {
        case "none" -> new Hold.NoInterval();
        case "avoid" -> new Hold.Avoid();
        case "level" -> new Hold.UntilLevel();
        case "restart-only" -> new Hold.RestartOnly();
        case "beyond" -> new Hold.MoreThan(hours.orElseThrow().most());
        default -> hours.<Hold>map(Hold.Wait::new).orElseGet(Hold.NotRead::new);
      };
    }

    List<Condition> conditions() {
      List<Condition> all = new ArrayList<>();
      number("inr-up-to").ifPresent(v -> all.add(new Condition.InrUpTo(v, has("inr-when"))));
      number("aptt-ratio-up-to").ifPresent(v -> all.add(new Condition.ApttRatioUpTo(v)));
      number("anti-xa-or-up-to").ifPresent(v -> all.add(new Condition.AntiXaUpTo(v)));
      number("level-or-below").ifPresent(v -> all.add(new Condition.LevelBelow(v)));
      if (has("inr")) {
        all.add(new Condition.InrNormal());
      }
      if (has("aptt")) {
        all.add(new Condition.ApttNormal(false));
      }
      if (has("aptt-or")) {
        all.add(new Condition.ApttNormal(true));
      }
      if (has("thrombin-time-or")) {
        all.add(new Condition.ThrombinTimeNormal());
      }
      return all;
    }

    /** Of the numbers where there are any, so that a local number does not look unread. */
    Grounds grounds() {
      boolean isNumbered = hours("hold").isPresent();
      String[] keys =
          facts.keys(row + ".").stream()
              .filter(key -> !isNumbered || facts.fact(key).value() instanceof FactValue.Figure)
              .toArray(String[]::new);
      return facts.grounds(keys);
    }
  }
}
