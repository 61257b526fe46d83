package cistern.exchange.policy;

import cistern.barrier.AgeLimits;
import cistern.barrier.EightPlusAgeOverTwentyFive;
import cistern.barrier.FourPlusAgeOverFifteen;
import cistern.exchange.lab.Loinc;
import cistern.fluid.TotalProtein;
import cistern.puncture.procedure.TubeTemplate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rules between which a policy may choose, by the key of the fact that names the rule. */
final class Choices {

  private static final Map<String, List<String>> BY_KEY =
      Map.of(
          AgeLimits.RULE_KEY,
          List.of(FourPlusAgeOverFifteen.RULE, EightPlusAgeOverTwentyFive.RULE),
          TotalProtein.RULE_KEY,
          List.of(TotalProtein.FIXED, TotalProtein.BY_AGE),
          Loinc.POLICY_KEY,
          List.of(Loinc.WITHHELD, Loinc.WRITTEN),
          "page.paper",
          List.of("a4", "letter"),
          "tubes.template",
          Arrays.stream(TubeTemplate.values()).map(TubeTemplate::code).toList());

  private Choices() {}

  /** The rules of a fact; none when it only describes how a result is computed. */
  static List<String> of(String key) {
    return BY_KEY.getOrDefault(key, List.of());
  }

  /** The rule of a word, if the fact allows it. */
  static Optional<String> parse(String key, String word) {
    return Optional.of(word).filter(of(key)::contains);
  }
}
