package cistern.criteria;

import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which input makes the difference where the editions disagree. */
final class Difference {

  private static final List<Item> ONLY_2024 =
      List.of(Item.OPTIC_NERVE, Item.CENTRAL_VEIN_SIGN, Item.PARAMAGNETIC_RIM);

  private Difference() {}

  /** In words; nothing where the verdicts agree. */
  static Optional<String> of(
      Criteria criteria, Evidence evidence, CsfPositivity fluid, List<CriteriaResult> results) {
    CriteriaVerdict earlier = results.getFirst().verdict();
    CriteriaVerdict later = results.getLast().verdict();
    if (earlier == later) {
      return Optional.empty();
    }
    List<String> inputs =
        later.compareTo(earlier) > 0 ? inputs(criteria, evidence, fluid, later) : List.of();
    String why =
        inputs.isEmpty()
            ? "they ask for different things, and no single input makes the difference"
            : "what only 2024 counts makes the difference: " + String.join(", ", inputs);
    return Optional.of(
        "The editions differ (2017 %s, 2024 %s): %s."
            .formatted(earlier.word().replace('-', ' '), later.word().replace('-', ' '), why));
  }

  private static List<String> inputs(
      Criteria criteria, Evidence evidence, CsfPositivity fluid, CriteriaVerdict later) {
    List<String> inputs =
        new ArrayList<>(
            ONLY_2024.stream()
                .filter(item -> evidence.answer(item) == Answer.YES)
                .filter(item -> isLower(criteria.verdicts(without(evidence, item), fluid), later))
                .map(Item::term)
                .toList());
    boolean isKappa = fluid.csf() == Answer.YES && fluid.bands() != Answer.YES;
    if (isKappa && isLower(criteria.verdicts(evidence, fluid.with(Answer.NO)), later)) {
      inputs.add("κ index");
    }
    return inputs;
  }

  private static boolean isLower(List<CriteriaVerdict> verdicts, CriteriaVerdict later) {
    return verdicts.getLast().compareTo(later) < 0;
  }

  private static Evidence without(Evidence evidence, Item item) {
    Map<Item, Answer> answers = new EnumMap<>(Item.class);
    answers.putAll(evidence.answers());
    answers.put(item, Answer.NO);
    return new Evidence(
        evidence.presentation(), evidence.attacks(), evidence.objectiveLesions(), answers);
  }
}
