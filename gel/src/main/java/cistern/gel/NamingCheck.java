package cistern.gel;

import cistern.gel.bands.GelBands;
import cistern.gel.lanes.LanePlan.NamedPair;
import cistern.gel.pairing.PairFinder;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Whether names that came to the lanes by a guess are borne out by the pairs themselves: as they
 * are named their lanes look like one person's, and moved by one lane they do not.
 *
 * @param least least log likelihood ratio
 */
record NamingCheck(double least) {

  /**
   * @param isReadable whether the lane of an index can be read
   * @param rows of the picture
   */
  boolean isBorneOut(
      PairFinder finder, GelBands gel, List<NamedPair> pairs, IntPredicate isReadable, int rows) {
    double named = logLikelihood(finder, gel, pairs(gel, pairs, isReadable, 0), rows);
    double left = logLikelihood(finder, gel, pairs(gel, pairs, isReadable, -1), rows);
    double right = logLikelihood(finder, gel, pairs(gel, pairs, isReadable, 1), rows);
    return named - Math.max(0, Math.max(left, right)) >= least;
  }

  private static List<PairFinder.Lanes> pairs(
      GelBands gel, List<NamedPair> pairs, IntPredicate isReadable, int moved) {
    int count = gel.lanes().size();
    return pairs.stream()
        .filter(p -> p.csf().isPresent() && p.serum().isPresent())
        .map(p -> new int[] {p.csf().getAsInt() + moved, p.serum().getAsInt() + moved})
        .filter(l -> Math.min(l[0], l[1]) >= 0 && Math.max(l[0], l[1]) < count)
        .filter(l -> isReadable.test(l[0]) && isReadable.test(l[1]))
        .map(l -> new PairFinder.Lanes(gel.lanes().get(l[0]), gel.lanes().get(l[1])))
        .toList();
  }

  private static double logLikelihood(
      PairFinder finder, GelBands gel, List<PairFinder.Lanes> pairs, int rows) {
    PairFinder.Habits habits = finder.habits(gel, pairs, rows);
    return pairs.stream().mapToDouble(p -> finder.logLikelihood(gel, p, rows, habits)).sum();
  }
}
