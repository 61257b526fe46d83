package cistern.barrier;

import cistern.fact.Facts;
import cistern.measurement.Interval;
import java.util.Optional;

/** The age limits of the albumin quotient and which of them is in force. */
public final class AgeLimits {

  /** The key by which policy chooses the rule for adults. */
  public static final String RULE_KEY = "albumin-quotient.limit-rule";

  private static final String ADULT = "albumin-quotient.adult-age";

  private final FourPlusAgeOverFifteen four;
  private final EightPlusAgeOverTwentyFive eight;
  private final ChildrensTable children;
  private final boolean isEightChosen;
  private final double adultAge;

  private AgeLimits(Facts facts) {
    four = new FourPlusAgeOverFifteen(facts);
    eight = new EightPlusAgeOverTwentyFive(facts);
    children = new ChildrensTable(facts);
    isEightChosen = facts.word(RULE_KEY).equals(EightPlusAgeOverTwentyFive.RULE);
    adultAge = facts.number(ADULT);
  }

  /** The limits of some facts. */
  public static AgeLimits of(Facts facts) {
    return new AgeLimits(facts);
  }

  /** Whether the rules for adults hold. */
  public boolean isAdult(double ageYears) {
    return ageYears >= adultAge;
  }

  /** The rule in force at an age in years. */
  public AgeLimit inForce(double ageYears) {
    if (!isAdult(ageYears)) {
      return children;
    }
    return isEightChosen ? eight : four;
  }

  /** The adult rule that is not in force. */
  public AgeLimit alternative() {
    return isEightChosen ? four : eight;
  }

  /** What another laboratory would say of a low quotient of a child; empty where it agrees. */
  String difference(double ageYears, Interval low) {
    return isAdult(ageYears) ? "" : children.difference(ageYears, low);
  }

  /** A caution when the rule in force was not established at this age; else empty. */
  String caution(double ageYears) {
    return isAdult(ageYears) && isEightChosen && !eight.isEstablishedAt(ageYears)
        ? "the age is outside the ages in which the limit was established"
        : "";
  }

  /** A rule of an age limit as people read it; nothing for a rule that is none. */
  public static Optional<String> toWords(String rule) {
    return switch (rule) {
      case FourPlusAgeOverFifteen.RULE -> Optional.of("4 + age/15");
      case EightPlusAgeOverTwentyFive.RULE -> Optional.of("8 + age/25");
      case ChildrensTable.RULE -> Optional.of("the table for children");
      default -> Optional.empty();
    };
  }
}
