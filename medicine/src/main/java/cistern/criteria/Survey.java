package cistern.criteria;

import java.util.List;
import java.util.Set;

/**
 * What all consistent completions of the unknown items give in one edition.
 *
 * @param verdicts every verdict that occurs
 * @param rows every row that holds in at least one of them
 */
record Survey(Set<CriteriaVerdict> verdicts, List<Row> rows) {

  /** All completions of what is known, for one presentation. */
  static Survey of(Completions completions, Known known) {
    int all = completions.together(completions.places(known, completions.unsettled(known)));
    return new Survey(Completions.verdicts(all), completions.rows(all));
  }

  /** The completion rule: what all completions agree on, else undetermined. */
  CriteriaVerdict verdict() {
    return verdicts.size() == 1 ? verdicts.iterator().next() : CriteriaVerdict.UNDETERMINED;
  }
}
