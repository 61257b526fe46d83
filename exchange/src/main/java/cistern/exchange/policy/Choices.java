package cistern.exchange.policy;

import cistern.barrier.AgeLimits;
import cistern.barrier.EightPlusAgeOverTwentyFive;
import cistern.barrier.FourPlusAgeOverFifteen;
import cistern.barrier.QuotientLimits;
import cistern.exchange.lab.Loinc;
import cistern.fact.Facts;
import cistern.fact.UnitKey;
import cistern.fluid.TotalProtein;
import cistern.puncture.procedure.TubeTemplate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The words between which a policy may choose, by the key of the fact that holds the word. */
final class Choices {

  private static final String ZONE = "page.time-zone";
  private static final String AS_GIVEN = "as-given";
  private static final String LETTERHEAD = "page.letterhead";
  private static final String RULE = ".limit-rule";

  private static final Map<String, List<String>> BY_KEY =
      Map.of(
          AgeLimits.RULE_KEY,
          List.of(FourPlusAgeOverFifteen.RULE, EightPlusAgeOverTwentyFive.RULE),
          TotalProtein.RULE_KEY,
          List.of(TotalProtein.FIXED, TotalProtein.BY_AGE),
          QuotientLimits.RULE_KEY,
          QuotientLimits.RULES,
          Loinc.POLICY_KEY,
          List.of(Loinc.WITHHELD, Loinc.WRITTEN),
          "page.locale",
          List.of("en-GB", "en-US", "en-CA", "en-AU", "en-IE"),
          "page.paper",
          List.of("a4", "letter"),
          "tubes.template",
          Arrays.stream(TubeTemplate.values()).map(TubeTemplate::code).toList());

  private Choices() {}

  /** The words of a fact; none when it is a text that no policy changes, or one of its own. */
  static List<String> of(String key) {
    return key.equals(ZONE)
        ? Stream.concat(Stream.of(AS_GIVEN), ZoneId.getAvailableZoneIds().stream().sorted())
            .toList()
        : BY_KEY.getOrDefault(key, tables(key));
  }

  /** The tables of limits of an analyte, each named in the keys of its rows behind the analyte. */
  private static List<String> tables(String key) {
    if (!key.endsWith(RULE)) {
      return List.of();
    }
    String analyte = key.substring(0, key.length() - RULE.length());
    return Facts.standard().keys(analyte + ".").stream()
        .map(row -> row.substring(analyte.length() + 1).split("[.]", 2))
        .filter(parts -> parts.length > 1)
        .map(parts -> parts[0])
        .distinct()
        .toList();
  }

  /** Whether a policy may change the word. */
  static boolean isOpen(String key) {
    return key.equals(LETTERHEAD) || key.startsWith(UnitKey.START) || !of(key).isEmpty();
  }

  /** What the word must be, where it is not one of a few; empty where it is. */
  static String wanted(String key) {
    return switch (key) {
      case ZONE -> "a time zone such as Europe/Berlin, or " + AS_GIVEN;
      case LETTERHEAD -> "the text of a letterhead, or none";
      default -> "";
    };
  }

  /** The word, if the fact allows it. */
  static Optional<String> parse(String key, String word) {
    return Optional.of(word)
        .filter(w -> key.equals(LETTERHEAD) ? !w.isBlank() : of(key).contains(w));
  }
}
