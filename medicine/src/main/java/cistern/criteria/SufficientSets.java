package cistern.criteria;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The smallest sets of unknown items that would settle an edition: setting all members to yes
 * (counts to two or more) and leaving the rest unknown gives met; or setting all to no (counts to
 * the lowest consistent number) gives not met.
 *
 * <p>Every edition is monotone: more evidence never lowers a verdict. So a set gives met whatever
 * the rest is when it does so with the rest at its lowest, and not met when it does so with the
 * rest at its highest.
 */
final class SufficientSets {

  private static final Comparator<Ranked> RANK =
      Comparator.<Ranked>comparingInt(ranked -> ranked.set().size())
          .thenComparing(Ranked::heaviest)
          .thenComparing(Ranked::names);

  private final Completions completions;
  private final List<Item> open;
  private final int low;
  private final int[] steps;

  private SufficientSets(Completions completions, Known known) {
    this.completions = completions;
    open = completions.open(known);
    low = completions.place(known.low());
    steps =
        open.stream()
            .mapToInt(i -> completions.step(i) * (known.highest(i) - known.lowest(i)))
            .toArray();
  }

  /** The sets that would give met, least burden first. */
  static List<List<Item>> toMet(Completions completions, Known known) {
    return new SufficientSets(completions, known).smallest(CriteriaVerdict.MET);
  }

  /** The sets that would give not met, least burden first. */
  static List<List<Item>> toNotMet(Completions completions, Known known) {
    return new SufficientSets(completions, known).smallest(CriteriaVerdict.NOT_MET);
  }

  private List<List<Item>> smallest(CriteriaVerdict wanted) {
    if (open.isEmpty()) {
      return List.of();
    }
    boolean[] isSufficient = new boolean[1 << open.size()];
    List<List<Item>> smallest = new ArrayList<>();
    for (int set = 0; set < isSufficient.length; set++) {
      if (isAnySmallerSufficient(isSufficient, set)) {
        isSufficient[set] = true;
      } else if (completions.verdict(completed(set, wanted)) == wanted) {
        isSufficient[set] = true;
        smallest.add(members(set));
      }
    }
    return ordered(smallest);
  }

  private static boolean isAnySmallerSufficient(boolean[] isSufficient, int set) {
    for (int rest = set; rest != 0; rest &= rest - 1) {
      if (isSufficient[set & ~Integer.lowestOneBit(rest)]) {
        return true;
      }
    }
    return false;
  }

  /** The place with the members at the wanted end, every other open item at the opposite end. */
  private int completed(int set, CriteriaVerdict wanted) {
    boolean isUpwards = wanted == CriteriaVerdict.MET;
    int place = low;
    for (int i = 0; i < steps.length; i++) {
      boolean isMember = (set & (1 << i)) != 0;
      place += isMember == isUpwards ? steps[i] : 0;
    }
    return place;
  }

  private List<Item> members(int set) {
    List<Item> members = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      if ((set & (1 << i)) != 0) {
        members.add(open.get(i));
      }
    }
    return List.copyOf(members);
  }

  /** Fewest items first, then the least heavy of the heaviest items, then by name. */
  private static List<List<Item>> ordered(List<List<Item>> sets) {
    return sets.stream()
        .map(set -> new Ranked(set, heaviest(set), set.toString()))
        .sorted(RANK)
        .map(Ranked::set)
        .toList();
  }

  private record Ranked(List<Item> set, Burden heaviest, String names) {}

  private static Burden heaviest(List<Item> set) {
    return set.stream().map(Item::burden).max(Comparator.naturalOrder()).orElse(Burden.RECORD);
  }
}
