package cistern.criteria;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Every completion in one edition for one presentation, each in a place of its own: one bit for an
 * answer, two for a count. What a completion gives is found when first asked for and then kept;
 * there are a few thousand at most.
 */
final class Completions {

  private static final int BITS_OF_COUNT = 2;
  private static final int NOT_MET = 1;
  private static final int UNDETERMINED = 2;
  private static final int MET = 4;
  private static final int BITS_OF_VERDICT = 3;

  private final Edition edition;
  private final Presentation presentation;
  private final Set<Item> read;
  private final Map<Item, Integer> steps = new EnumMap<>(Item.class);

  /** What was found in each place: a bit for the verdict and one for every row that holds. */
  private final int[] found;

  Completions(Edition edition, Presentation presentation) {
    this.edition = edition;
    this.presentation = presentation;
    read = edition.reads(presentation);
    Set<Item> items = EnumSet.of(Item.NO_BETTER_EXPLANATION);
    items.addAll(read);
    int bits = 0;
    for (Item item : items) {
      steps.put(item, 1 << bits);
      bits += item.top() > 1 ? BITS_OF_COUNT : 1;
    }
    found = new int[1 << bits];
  }

  /** What is known of the items that the rows read, alone. */
  Known read(Known known) {
    long mask = 0;
    for (Item item : steps.keySet()) {
      mask |= Completion.placed(item, Completion.MASK);
    }
    return new Known(presentation, known.low() & mask, known.high() & mask);
  }

  /** What the rows read and what is known in more than one way. */
  List<Item> open(Known known) {
    return read.stream().filter(item -> !known.isSettled(item)).toList();
  }

  /**
   * As {@link #open}, with whether an explanation is better, which is asked of every row before.
   */
  List<Item> unsettled(Known known) {
    return steps.keySet().stream().filter(item -> !known.isSettled(item)).toList();
  }

  /** The place of some levels. */
  int place(long levels) {
    int place = 0;
    for (Map.Entry<Item, Integer> item : steps.entrySet()) {
      place += Completion.level(levels, item.getKey()) * item.getValue();
    }
    return place;
  }

  /** How far apart two levels of an item stand. */
  int step(Item item) {
    return steps.getOrDefault(item, 0);
  }

  /** The bits in which the levels of some items differ. */
  int bits(Set<Item> items) {
    int bits = 0;
    for (Item item : items) {
      bits |= step(item) * (item.top() > 1 ? (1 << BITS_OF_COUNT) - 1 : 1);
    }
    return bits;
  }

  /** The places of all that is consistent with what is known, the first item varying least. */
  int[] places(Known known, List<Item> open) {
    int[] places = {place(known.low())};
    for (Item item : open) {
      int levels = known.highest(item) - known.lowest(item) + 1;
      int step = step(item);
      int[] more = new int[places.length * levels];
      for (int i = 0; i < more.length; i++) {
        more[i] = places[i / levels] + i % levels * step;
      }
      places = more;
    }
    return places;
  }

  /** The verdict in a place. */
  CriteriaVerdict verdict(int place) {
    return switch (at(place) & (NOT_MET | UNDETERMINED | MET)) {
      case NOT_MET -> CriteriaVerdict.NOT_MET;
      case MET -> CriteriaVerdict.MET;
      default -> CriteriaVerdict.UNDETERMINED;
    };
  }

  /** Every verdict and every row that occurs in some places, as bits. */
  int together(int[] places) {
    int all = 0;
    for (int place : places) {
      all |= at(place);
    }
    return all;
  }

  /** The verdicts among some bits. */
  static Set<CriteriaVerdict> verdicts(int bits) {
    Set<CriteriaVerdict> verdicts = EnumSet.noneOf(CriteriaVerdict.class);
    for (CriteriaVerdict verdict : CriteriaVerdict.values()) {
      if ((bits & bit(verdict)) != 0) {
        verdicts.add(verdict);
      }
    }
    return verdicts;
  }

  /** The rows among some bits, in the order of the table. */
  List<Row> rows(int bits) {
    List<Row> rows = edition.rows();
    return rows.stream().filter(row -> (bits & bit(rows.indexOf(row))) != 0).toList();
  }

  /** Finding it twice gives the same, so that nothing has to be waited for. */
  private int at(int place) {
    int bits = found[place];
    if (bits == 0) {
      bits = find(completion(place));
      found[place] = bits;
    }
    return bits;
  }

  private int find(Completion completion) {
    int bits = bit(edition.verdict(completion));
    if (completion.isYes(Item.NO_BETTER_EXPLANATION)) {
      List<Row> rows = edition.rows();
      for (int i = 0; i < rows.size(); i++) {
        bits |= rows.get(i).condition().test(completion) ? bit(i) : 0;
      }
    }
    return bits;
  }

  private Completion completion(int place) {
    long levels = 0;
    for (Map.Entry<Item, Integer> item : steps.entrySet()) {
      int mask = (1 << (item.getKey().top() > 1 ? BITS_OF_COUNT : 1)) - 1;
      levels += Completion.placed(item.getKey(), place / item.getValue() & mask);
    }
    return new Completion(presentation, levels);
  }

  private static int bit(CriteriaVerdict verdict) {
    return switch (verdict) {
      case NOT_MET -> NOT_MET;
      case UNDETERMINED -> UNDETERMINED;
      case MET -> MET;
    };
  }

  private static int bit(int row) {
    return 1 << (BITS_OF_VERDICT + row);
  }
}
