package cistern.gel.pairing;

import cistern.fact.Facts;
import cistern.gel.bands.Band;
import cistern.gel.bands.GelBands;
import cistern.gel.bands.LaneBands;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Compares the CSF lane of a pair with its serum lane. */
public final class PairFinder {
  private static final double[] LOOSENESS = {0.12, 0.2, 0.35, 0.6, 1};

  private final Facts facts;
  private final Ladder ladder;
  private final SerumIdentity identity;
  private final Unfitted unfitted;

  /** A finder under some facts. */
  public PairFinder(Facts facts) {
    this.facts = facts;
    this.identity = SerumIdentity.of(facts);
    this.unfitted = Unfitted.of(facts);
    this.ladder =
        new Ladder(
            (int) facts.number("gel.ladder.fewest"),
            facts.number("gel.ladder.share"),
            facts.number("gel.ladder.widest"),
            facts.number("gel.ladder.farthest"),
            facts.number("gel.ladder.uneven"),
            facts.number("gel.ladder.uneven-wide"));
  }

  /**
   * Two lanes of one person.
   *
   * @param csf its CSF lane
   * @param serum its serum lane
   */
  public record Lanes(LaneBands csf, LaneBands serum) {}

  /**
   * What the pairs of a gel have in common.
   *
   * @param looseness how far lanes stray from where the gel's tilt foretells them, over what is
   *     usual
   * @param likeness how alike the backgrounds of a person's lanes are
   */
  public record Habits(double looseness, Likeness likeness) {}

  /**
   * What the pairs of a gel have in common.
   *
   * @param height rows of the picture
   */
  public Habits habits(GelBands gel, List<Lanes> pairs, double height) {
    return new Habits(looseness(gel, pairs, height), Likeness.of(facts, pairs));
  }

  /**
   * How far the lanes of a gel stray from where its tilt foretells them, over what is usual: the
   * mean over some values, each weighted by how well all pairs of the gel agree under it.
   *
   * @param height rows of the picture
   */
  private double looseness(GelBands gel, List<Lanes> pairs, double height) {
    double[] logs = new double[LOOSENESS.length];
    for (int k = 0; k < logs.length; k++) {
      AlignmentSearch search = new AlignmentSearch(facts, gel.sigma(), height, LOOSENESS[k]);
      logs[k] = -LOOSENESS[k] / facts.number("gel.alignment.looseness");
      for (Lanes p : pairs) {
        double evidence =
            search.evidence(p.csf.bands(), p.serum.bands(), foretold(gel, p), height / 2);
        logs[k] += identity.logLikelihood(evidence);
      }
    }
    double most = Arrays.stream(logs).max().orElse(0);
    double sum = 0;
    double mean = 0;
    for (int k = 0; k < logs.length; k++) {
      double weight = Math.exp(logs[k] - most);
      sum += weight;
      mean += weight * Math.log(LOOSENESS[k]);
    }
    return Math.exp(mean / sum);
  }

  private static double foretold(GelBands gel, Lanes pair) {
    return gel.tilt().drop(pair.csf.place().xCentre(), pair.serum.place().xCentre());
  }

  /**
   * Log likelihood of one person against two.
   *
   * @param height rows of the picture
   * @param habits what the pairs of this gel have in common
   */
  public double logLikelihood(GelBands gel, Lanes pair, double height, Habits habits) {
    return new AlignmentSearch(facts, gel.sigma(), height, habits.looseness)
            .evidence(pair.csf.bands(), pair.serum.bands(), foretold(gel, pair), height / 2)
        + habits.likeness.logLikelihood(pair);
  }

  /**
   * What the bands of a CSF lane and of the serum lane beside it say.
   *
   * @param height rows of the picture
   * @param habits what the pairs of this gel have in common
   */
  public PairBands compare(GelBands gel, Lanes pair, double height, Habits habits) {
    LaneBands csf = pair.csf;
    LaneBands serum = pair.serum;
    double sigma = gel.sigma();
    AlignmentSearch search = new AlignmentSearch(facts, sigma, height, habits.looseness);
    double foretold = foretold(gel, pair);
    List<Alignment> alignments = search.search(csf.bands(), serum.bands(), foretold, height / 2);
    double evidence = logLikelihood(gel, pair, height, habits);
    double spread =
        Math.hypot(
            facts.number("gel.matching.spread") * sigma, facts.number("gel.matching.pixels"));
    List<CountDistribution> parts = new ArrayList<>();
    double[] weights = new double[alignments.size()];
    double shared = 0;
    for (int i = 0; i < weights.length; i++) {
      Alignment a = alignments.get(i);
      double[] both = shared(csf, serum, a, match(pair, a, spread));
      double[] only = new double[both.length];
      double none = 1;
      for (int k = 0; k < both.length; k++) {
        double real = csf.bands().get(k).probability();
        only[k] = real * (1 - both[k]);
        none *= 1 - real * both[k];
      }
      parts.add(CountDistribution.of(only));
      weights[i] = a.weight();
      shared += a.weight() * (1 - none);
    }
    Alignment best = alignments.getFirst();
    CountDistribution only = CountDistribution.of(parts, weights);
    Matching matching = match(pair, best, spread);
    return verdict(gel, csf, serum, new Outcome(best, matching, spread, only, shared, evidence));
  }

  private Matching match(Lanes pair, Alignment a, double spread) {
    double top = facts.number("gel.matching.top");
    return Matching.of(pair.csf.bands(), pair.serum.bands(), a, spread, top);
  }

  private record Outcome(
      Alignment best,
      Matching matching,
      double spread,
      CountDistribution only,
      double shared,
      double evidence) {}

  /** The counterparts under the best alignment, each with its row in the serum lane. */
  private static final class Met {
    private final int[] of;
    private final boolean[] isMet;
    private final List<Double> rows = new ArrayList<>();

    Met(int csfBands, int serumBands) {
      of = new int[csfBands];
      isMet = new boolean[serumBands];
    }
  }

  private PairBands verdict(GelBands gel, LaneBands csf, LaneBands serum, Outcome o) {
    double[] both = shared(csf, serum, o.best, o.matching);
    Met found = counterparts(csf, serum, o, both);
    List<Double> response = new ArrayList<>();
    for (Band c : csf.bands()) {
      response.add(response(serum, o.best.toSerum(c.y()), gel.sigma()) / c.height());
    }
    int alone = alone(gel.sigma(), csf, serum, o, found);
    double other = identity.probabilityOfOther(o.evidence);
    return new PairBands(
        Arrays.stream(found.of).boxed().toList(),
        response,
        o.only,
        (int) IntStream.range(0, both.length).filter(i -> isShared(csf, both, i)).count(),
        alone,
        o.shared,
        ladder.isLadder(found.rows, (int) likely(serum), gel.sigma()),
        other);
  }

  private static boolean isShared(LaneBands csf, double[] both, int i) {
    return csf.bands().get(i).probability() >= 0.5 && both[i] >= 0.5;
  }

  private static long likely(LaneBands lane) {
    return lane.bands().stream().filter(b -> b.probability() >= 0.5).count();
  }

  private static Met counterparts(LaneBands csf, LaneBands serum, Outcome o, double[] both) {
    Met found = new Met(both.length, serum.bands().size());
    for (int i = 0; i < both.length; i++) {
      Band c = csf.bands().get(i);
      int j = o.matching.counterpart()[i];
      boolean isPaired = o.matching.isMatched(i) && both[i] >= 0.5;
      found.of[i] = isPaired ? j : -1;
      if (isPaired && c.probability() > 0.3) {
        found.isMet[j] = true;
        if (isShared(csf, both, i)) {
          double row = serum.bands().get(j).y();
          found.rows.add(row);
        }
      }
    }
    return found;
  }

  /** How many bands of the serum have neither a counterpart nor an answer in the CSF. */
  private int alone(double sigma, LaneBands csf, LaneBands serum, Outcome o, Met found) {
    int alone = 0;
    for (int j = 0; j < found.isMet.length; j++) {
      Band s = serum.bands().get(j);
      if (s.probability() >= 0.5 && !found.isMet[j]) {
        double answer = response(csf, o.best.toCsf(s.y()), sigma);
        alone += answer < facts.number("gel.matching.response") * s.height() ? 1 : 0;
      }
    }
    return alone;
  }

  /** The chance that each CSF band has a counterpart in the serum. */
  private double[] shared(LaneBands csf, LaneBands serum, Alignment a, Matching matching) {
    double[] both = new double[csf.bands().size()];
    double boost = facts.number("gel.matching.boost");
    for (int i = 0; i < both.length; i++) {
      Band c = csf.bands().get(i);
      double row = a.toSerum(c.y());
      double answer = response(serum, row, c.sigma() * 0.6) / c.height();
      double noise = serum.noiseAt(row) / c.height();
      both[i] = unfitted.of(answer, noise);
      if (matching.isMatched(i)) {
        double p = serum.bands().get(matching.counterpart()[i]).probability();
        double real = 1 / (1 + (1 - p) / Math.max(1e-9, p) * Math.exp(-boost));
        both[i] = Math.max(both[i], real / (1 + Math.exp(-matching.gains()[i])));
      }
    }
    return both;
  }

  /** The greatest answer of a lane within a reach of a row, at least 0. */
  private static double response(LaneBands lane, double row, double reach) {
    double most = 0;
    for (double d = -reach; d <= reach; d += reach / 4) {
      most = Math.max(most, lane.answerAt(row + d));
    }
    return most;
  }
}
