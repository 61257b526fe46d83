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

  private final Edition edition;
  private final Known known;
  private final List<Item> open;
  private final long[] rises;

  private SufficientSets(Edition edition, Known known) {
    this.edition = edition;
    this.known = known;
    this.open =
        edition.reads(known.presentation()).stream().filter(i -> !known.isSettled(i)).toList();
    this.rises =
        open.stream()
            .mapToLong(i -> Completion.placed(i, known.highest(i) - known.lowest(i)))
            .toArray();
  }

  /** The sets that would give met, least burden first. */
  static List<List<Item>> toMet(Edition edition, Known known) {
    return new SufficientSets(edition, known).smallest(CriteriaVerdict.MET);
  }

  /** The sets that would give not met, least burden first. */
  static List<List<Item>> toNotMet(Edition edition, Known known) {
    return new SufficientSets(edition, known).smallest(CriteriaVerdict.NOT_MET);
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
      } else if (edition.verdict(completed(set, wanted)) == wanted) {
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

  /** The members at the wanted end, every other open item at the opposite end. */
  private Completion completed(int set, CriteriaVerdict wanted) {
    boolean isUpwards = wanted == CriteriaVerdict.MET;
    long levels = known.low();
    for (int i = 0; i < rises.length; i++) {
      boolean isMember = (set & (1 << i)) != 0;
      levels += isMember == isUpwards ? rises[i] : 0;
    }
    return new Completion(known.presentation(), levels);
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
  static List<List<Item>> ordered(List<List<Item>> sets) {
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
