package cistern.criteria;

import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** One published edition of the criteria: a new edition is a new class. */
sealed interface Edition permits McDonald2017, McDonald2024Draft {

  /** The year by which it is called. */
  String year();

  /** The name of the rule set, with {@code draft} until it has been seen in full. */
  String ruleSet();

  /** The rows, in the order of the table. */
  List<Row> rows();

  /** What the rows for a presentation read. */
  Set<Item> reads(Presentation presentation);

  /** The verdict where no row holds, although no explanation is better. */
  CriteriaVerdict withoutRow(Completion completion);

  /** What a verdict that no row gives rests on. */
  Grounds groundsWithoutRow(Presentation presentation);

  /** Why the verdict is what it is, for a presentation. */
  String note(Presentation presentation, CriteriaVerdict verdict);

  /** What stands for dissemination in time in a completion that is met. */
  Optional<DisseminationInTime> disseminationInTime(Completion completion);

  /** Whether this rule set cannot answer a presentation at all. */
  default boolean isUnresolved(Presentation presentation) {
    return false;
  }

  /** The verdict on one completion. */
  default CriteriaVerdict verdict(Completion completion) {
    if (!completion.isYes(Item.NO_BETTER_EXPLANATION)) {
      return CriteriaVerdict.NOT_MET;
    }
    for (Row row : rows()) {
      if (row.condition().test(completion)) {
        return CriteriaVerdict.MET;
      }
    }
    return withoutRow(completion);
  }
}
