package cistern.criteria;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Evidence and fluid written as words: {@code "attack attacks=1 lesions=2 pv it bands=U rest=no"}.
 * An item alone is yes; {@code =N} is no; {@code =U} is unknown; {@code rest} is what is unlisted.
 */
record Stated(Evidence evidence, CsfPositivity fluid) {

  static final Facts FACTS = Facts.standard();

  private static final Map<String, Item> SHORT =
      Map.ofEntries(
          Map.entry("nbe", Item.NO_BETTER_EXPLANATION),
          Map.entry("historical", Item.HISTORICAL_ATTACK),
          Map.entry("12mo", Item.PROGRESSION_TWELVE_MONTHS),
          Map.entry("pv", Item.PERIVENTRICULAR),
          Map.entry("cj", Item.CORTICAL_JUXTACORTICAL),
          Map.entry("it", Item.INFRATENTORIAL),
          Map.entry("sc", Item.SPINAL_CORD),
          Map.entry("on", Item.OPTIC_NERVE),
          Map.entry("cord2", Item.CORD_LESIONS_TWO_OR_MORE),
          Map.entry("dit", Item.NEW_OR_MIXED_LESIONS),
          Map.entry("cvs", Item.CENTRAL_VEIN_SIGN),
          Map.entry("prl", Item.PARAMAGNETIC_RIM));

  static Stated of(String words) {
    Presentation presentation = Presentation.UNKNOWN;
    Count attacks = Count.UNKNOWN;
    Count lesions = Count.UNKNOWN;
    Answer bands = Answer.UNKNOWN;
    Answer csf = Answer.UNKNOWN;
    Map<Item, Answer> answers = new EnumMap<>(Item.class);
    if (words.contains("rest=no")) {
      SHORT.values().forEach(item -> answers.put(item, Answer.NO));
      answers.put(Item.NO_BETTER_EXPLANATION, Answer.YES);
      bands = Answer.NO;
      csf = Answer.NO;
    }
    for (String word : words.split(" ", -1)) {
      String name = word.replaceAll("=.*", "");
      String value = word.contains("=") ? word.replaceAll(".*=", "") : "Y";
      switch (name) {
        case "rest" -> {}
        case "attacks" -> attacks = count(value);
        case "lesions" -> lesions = count(value);
        case "bands" -> bands = answer(value);
        case "csf" -> csf = answer(value);
        default -> {
          Item item = SHORT.get(name);
          if (item == null) {
            presentation = Presentation.parse(name).orElseThrow();
          } else {
            answers.put(item, answer(value));
          }
        }
      }
    }
    return new Stated(new Evidence(presentation, attacks, lesions, answers), fluid(bands, csf));
  }

  static CsfPositivity fluid(Answer bands, Answer csf) {
    return new CsfPositivity(
        bands, csf, Grounds.MEASURED, Grounds.MEASURED, new CsfPositivity.Words("", ""), List.of());
  }

  CriteriaResult result2017() {
    return Criteria.of(FACTS).interpret(evidence, fluid).getFirst();
  }

  CriteriaResult result2024() {
    return Criteria.of(FACTS).interpret(evidence, fluid).getLast();
  }

  private static Count count(String value) {
    if (value.equals("U")) {
      return Count.UNKNOWN;
    }
    return value.startsWith("+")
        ? Count.atLeast(Integer.parseInt(value.substring(1)))
        : Count.of(Integer.parseInt(value));
  }

  private static Answer answer(String value) {
    return switch (value) {
      case "Y" -> Answer.YES;
      case "N" -> Answer.NO;
      case "U" -> Answer.UNKNOWN;
      default -> throw new IllegalArgumentException(value);
    };
  }
}
