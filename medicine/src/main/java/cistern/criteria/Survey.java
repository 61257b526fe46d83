package cistern.criteria;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What all consistent completions of the unknown items give in one edition.
 *
 * @param verdicts every verdict that occurs
 * @param rows every row that holds in at least one of them
 */
record Survey(Set<CriteriaVerdict> verdicts, List<Row> rows) {

  /** All completions of what is known, for one presentation. */
  static Survey of(Edition edition, Known known) {
    List<Item> open =
        Stream.concat(
                Stream.of(Item.NO_BETTER_EXPLANATION), edition.reads(known.presentation()).stream())
            .distinct()
            .filter(item -> !known.isSettled(item))
            .toList();
    Tally tally = new Tally(edition);
    tally.add(known, open, known.low());
    return new Survey(tally.verdicts, tally.rows());
  }

  /** The completion rule: what all completions agree on, else undetermined. */
  CriteriaVerdict verdict() {
    return verdicts.size() == 1 ? verdicts.iterator().next() : CriteriaVerdict.UNDETERMINED;
  }

  private static final class Tally {
    private final Edition edition;
    private final Set<CriteriaVerdict> verdicts = EnumSet.noneOf(CriteriaVerdict.class);
    private long rowBits;

    Tally(Edition edition) {
      this.edition = edition;
    }

    void add(Known known, List<Item> open, long levels) {
      if (open.isEmpty()) {
        add(new Completion(known.presentation(), levels));
        return;
      }
      Item item = open.getFirst();
      List<Item> rest = open.subList(1, open.size());
      for (int level = known.lowest(item); level <= known.highest(item); level++) {
        add(known, rest, levels + Completion.placed(item, level - known.lowest(item)));
      }
    }

    private void add(Completion completion) {
      verdicts.add(edition.verdict(completion));
      if (!completion.isYes(Item.NO_BETTER_EXPLANATION)) {
        return;
      }
      List<Row> rows = edition.rows();
      for (int i = 0; i < rows.size(); i++) {
        if ((rowBits & (1L << i)) == 0 && rows.get(i).condition().test(completion)) {
          rowBits |= 1L << i;
        }
      }
    }

    List<Row> rows() {
      List<Row> holding = new ArrayList<>();
      for (int i = 0; i < edition.rows().size(); i++) {
        if ((rowBits & (1L << i)) != 0) {
          holding.add(edition.rows().get(i));
        }
      }
      return holding;
    }
  }
}
