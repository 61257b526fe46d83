package cistern.fluid;

import cistern.fact.Facts;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Answer;
import cistern.panel.Person;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The first 90 days of life, whose limits of cells, protein and glucose are their own (Thomson
 * 2018, doi 10.1542/peds.2017-3405; in intensive care Srinivasan 2012, PMC4593309).
 */
public enum Infancy {
  /** To 28 days, born before term, unless said not to be in intensive care. */
  PRETERM,
  /** To 28 days, born at term or not known, in intensive care. */
  INTENSIVE_CARE,
  /** To 28 days. */
  NEWBORN,
  /** To 60 days. */
  MIDDLE,
  /** To 90 days. */
  LATE;

  /** The part of the first 90 days that a person is in, if in any. */
  public static Optional<Infancy> of(Person person, Facts facts) {
    OptionalDouble days = person.days();
    if (days.isEmpty() || days.getAsDouble() > facts.number("infant.age-days.to")) {
      return Optional.empty();
    }
    if (days.getAsDouble() <= facts.number("infant.newborn.age-days.to")) {
      return Optional.of(newborn(person.infant()));
    }
    return Optional.of(
        days.getAsDouble() <= facts.number("infant.middle.age-days.to") ? MIDDLE : LATE);
  }

  private static Infancy newborn(Person.Infant infant) {
    if (infant.intensiveCare() == Answer.NO) {
      return NEWBORN;
    }
    if (infant.preterm().isYes()) {
      return PRETERM;
    }
    return infant.intensiveCare().isYes() ? INTENSIVE_CARE : NEWBORN;
  }

  /** The key of the lower limit of glucose, which was not told apart by birth or care. */
  public String glucoseKey() {
    return switch (this) {
      case PRETERM, INTENSIVE_CARE, NEWBORN -> NEWBORN.key("glucose.lower");
      case MIDDLE, LATE -> key("glucose.lower");
    };
  }

  /** The key of a limit at this age; a fact only where the table has one. */
  public String key(String limit) {
    return "infant." + name().toLowerCase(Locale.ROOT).replace('_', '-') + "." + limit;
  }

  /** The upper limits of the leukocytes. */
  Limits leukocytes(Facts facts) {
    return upper("leukocytes.upper", facts);
  }

  /** The upper limits of the total protein; none in the last part. */
  Limits protein(Facts facts) {
    return upper("total-protein.upper", facts);
  }

  private Limits upper(String limit, Facts facts) {
    return facts
        .find(key(limit))
        .map(fact -> Limits.upper(Threshold.over(facts.number(fact.key()))))
        .orElse(Limits.NONE);
  }
}
