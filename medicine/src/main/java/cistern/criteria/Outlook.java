package cistern.criteria;

import cistern.measurement.Answer;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What could still come out of both editions, each unknown item having a chance to turn out yes:
 * how many bits about the verdict some items would tell, on average.
 */
public final class Outlook {

  private static final int VERDICTS = CriteriaVerdict.values().length;
  private static final double LN_2 = Math.log(2);
  private static final Outlook SETTLED = new Outlook(List.of());

  private final List<InEdition> editions;

  private Outlook(List<InEdition> editions) {
    this.editions = editions;
  }

  /**
   * The chances of the unknown.
   *
   * @param fluid that the fluid turns out positive
   * @param other that another item turns out yes
   */
  public record Chances(double fluid, double other) {}

  static Outlook of(
      List<Rulings> editions, Evidence evidence, CsfPositivity fluid, Chances chances) {
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
    return new Outlook(
        editions.stream()
            .map(e -> new InEdition(e, e.completions(known.presentation()), known, chances))
            .toList());
  }

  /** The bits that some items would tell of the verdict, in the edition where they tell more. */
  public double information(Set<Item> items) {
    return editions.stream().mapToDouble(e -> e.information(items)).max().orElse(0);
  }

  /** The bits that are open of the verdict, in the edition where more is open. */
  public double openness() {
    return information(EnumSet.allOf(Item.class));
  }

  /** What could come out in one edition; looked at when nobody asked the same before. */
  private static final class InEdition {

    private final Rulings rulings;
    private final Completions completions;
    private final Known known;
    private final Chances chances;
    private Optional<Endings> endings = Optional.empty();

    InEdition(Rulings rulings, Completions completions, Known known, Chances chances) {
      this.rulings = rulings;
      this.completions = completions;
      this.known = completions.read(known);
      this.chances = chances;
    }

    double information(Set<Item> items) {
      return rulings.information(
          new Rulings.Question(known, chances, completions.bits(items)),
          question -> endings().information(question.items()));
    }

    private Endings endings() {
      Endings all = endings.orElseGet(() -> new Endings(completions, known, chances));
      endings = Optional.of(all);
      return all;
    }
  }

  /** All completions in one edition, each with its chance. */
  private static final class Endings {

    private final int[] places;
    private final double[] chances;
    private final int[] verdicts;
    private final int varying;
    private final double open;

    Endings(Completions completions, Known known, Chances of) {
      List<Item> items = completions.open(known);
      places = completions.places(known, items);
      chances = chances(known, items, of);
      verdicts = Arrays.stream(places).map(p -> number(completions.verdict(p))).toArray();
      varying = Arrays.stream(places).reduce(0, (all, p) -> all | (p ^ places[0]));
      double[] all = new double[VERDICTS];
      for (int i = 0; i < places.length; i++) {
        all[verdicts[i]] += chances[i];
      }
      open = openness(all, 0);
    }

    /** In the order of the places. */
    private static double[] chances(Known known, List<Item> open, Chances of) {
      double[] chances = {1};
      for (Item item : open) {
        double yes = item.kind() == Item.Kind.FLUID ? of.fluid() : of.other();
        int others = known.highest(item) - known.lowest(item);
        double[] more = new double[chances.length * (others + 1)];
        for (int i = 0; i < more.length; i++) {
          boolean isYes = i % (others + 1) == others;
          more[i] = chances[i / (others + 1)] * (isYes ? yes : (1 - yes) / others);
        }
        chances = more;
      }
      return chances;
    }

    double information(int items) {
      int asked = items & varying;
      return asked == varying ? open : Math.max(0, open - left(asked));
    }

    /** What is open on average once the bits that are asked for are known. */
    private double left(int asked) {
      double[] byBits = new double[(asked + 1) * VERDICTS];
      for (int i = 0; i < places.length; i++) {
        byBits[(places[i] & asked) * VERDICTS + verdicts[i]] += chances[i];
      }
      DoubleSummaryStatistics left = new DoubleSummaryStatistics();
      int bits = 0;
      do {
        left.accept(openness(byBits, bits * VERDICTS));
        bits = (bits - asked) & asked;
      } while (bits != 0);
      return left.getSum();
    }

    private static int number(CriteriaVerdict verdict) {
      return switch (verdict) {
        case NOT_MET -> 0;
        case UNDETERMINED -> 1;
        case MET -> 2;
      };
    }

    /** The entropy of the chances of the verdicts in bits, times their sum. */
    private static double openness(double[] chances, int first) {
      DoubleSummaryStatistics sum = new DoubleSummaryStatistics();
      int possible = 0;
      for (int i = first; i < first + VERDICTS; i++) {
        sum.accept(chances[i]);
        possible += chances[i] > 0 ? 1 : 0;
      }
      double bits = 0;
      for (int i = first; i < first + VERDICTS && possible > 1; i++) {
        bits -= chances[i] > 0 ? chances[i] * Math.log(chances[i] / sum.getSum()) / LN_2 : 0;
      }
      return bits;
    }
  }
}
