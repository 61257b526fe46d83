package cistern.criteria;

import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What could still come out of both editions, each unknown item having a chance to turn out yes:
 * how many bits about the verdict some items would tell, on average.
 */
public final class Outlook {

  private static final int VERDICTS = CriteriaVerdict.values().length;
  private static final double LN_2 = Math.log(2);
  private static final Outlook SETTLED = new Outlook(List.of());

  private final List<Endings> editions;

  private Outlook(List<Endings> editions) {
    this.editions = editions;
  }

  /**
   * All completions in one edition.
   *
   * @param all each of them
   * @param varying the bits of the levels in which they differ
   */
  private record Endings(List<Ending> all, long varying) {

    static Endings of(List<Ending> all) {
      long first = all.getFirst().levels();
      return new Endings(
          all, all.stream().mapToLong(e -> e.levels() ^ first).reduce(0, (a, b) -> a | b));
    }
  }

  /**
   * One completion.
   *
   * @param levels the level of every item
   * @param chance its chance, 0 to 1
   * @param verdict what it gives
   */
  private record Ending(long levels, double chance, CriteriaVerdict verdict) {}

  /**
   * The chances of the unknown.
   *
   * @param fluid that the fluid turns out positive
   * @param other that another item turns out yes
   */
  public record Chances(double fluid, double other) {}

  static Outlook of(
      List<Edition> editions, Evidence evidence, CsfPositivity fluid, Chances chances) {
    Evidence assumed =
        evidence.presentation() == Presentation.UNKNOWN
            ? evidence.withPresentation(Presentation.ATTACK)
            : evidence;
    boolean isSettled =
        evidence.answer(Item.NO_BETTER_EXPLANATION) == Answer.NO
            || !assumed.contradictions().isEmpty();
    if (isSettled) {
      return SETTLED;
    }
    Known known = Known.of(assumed, assumed.presentation(), fluid.bands(), fluid.csf());
    return new Outlook(editions.stream().map(e -> endings(e, known, chances)).toList());
  }

  private static Endings endings(Edition edition, Known known, Chances chances) {
    List<Item> open =
        edition.reads(known.presentation()).stream().filter(i -> !known.isSettled(i)).toList();
    List<Ending> endings = new ArrayList<>();
    add(new Branch(edition, known, chances, endings), open, known.low(), 1);
    return Endings.of(endings);
  }

  private record Branch(Edition edition, Known known, Chances chances, List<Ending> endings) {}

  private static void add(Branch branch, List<Item> open, long levels, double chance) {
    if (open.isEmpty()) {
      Completion completion = new Completion(branch.known.presentation(), levels);
      branch.endings.add(new Ending(levels, chance, branch.edition.verdict(completion)));
      return;
    }
    Item item = open.getFirst();
    List<Item> rest = open.subList(1, open.size());
    int low = branch.known.lowest(item);
    int high = branch.known.highest(item);
    double yes = item.kind() == Item.Kind.FLUID ? branch.chances.fluid() : branch.chances.other();
    for (int level = low; level <= high; level++) {
      double share = level == high ? yes : (1 - yes) / (high - low);
      add(branch, rest, levels + Completion.placed(item, level - low), chance * share);
    }
  }

  /** The bits that some items would tell of the verdict, in the edition where they tell more. */
  public double information(Set<Item> items) {
    return editions.stream().mapToDouble(e -> information(e, items)).max().orElse(0);
  }

  /** The bits that are open of the verdict, in the edition where more is open. */
  public double openness() {
    return information(EnumSet.allOf(Item.class));
  }

  private static double information(Endings endings, Set<Item> items) {
    long mask =
        items.stream().mapToLong(i -> Completion.placed(i, 3)).reduce(0, (a, b) -> a | b)
            & endings.varying();
    double[][] byItems = new double[1 << Long.bitCount(mask)][VERDICTS];
    double[] all = new double[VERDICTS];
    for (Ending ending : endings.all()) {
      int verdict = place(ending.verdict());
      byItems[(int) Long.compress(ending.levels(), mask)][verdict] += ending.chance();
      all[verdict] += ending.chance();
    }
    double left = Arrays.stream(byItems).mapToDouble(Outlook::openness).sum();
    return Math.max(0, openness(all) - left);
  }

  private static int place(CriteriaVerdict verdict) {
    return switch (verdict) {
      case NOT_MET -> 0;
      case UNDETERMINED -> 1;
      case MET -> 2;
    };
  }

  /** The entropy of some chances in bits, times their sum. */
  private static double openness(double[] chances) {
    double sum = Arrays.stream(chances).sum();
    double bits = 0;
    for (double chance : chances) {
      bits -= chance > 0 ? chance * Math.log(chance / sum) / LN_2 : 0;
    }
    return bits;
  }
}
