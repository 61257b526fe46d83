package cistern.gel.pairing;

import cistern.fact.Facts;
import cistern.gel.bands.Band;
import cistern.gel.bands.GelBands;
import cistern.gel.bands.LaneBands;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Compares the CSF lane of a pair with its serum lane. */
public final class PairFinder {
  private final Facts facts;
  private final Ladder ladder;
  private final SerumIdentity identity;

  public PairFinder(Facts facts) {
    this.facts = facts;
    this.identity = SerumIdentity.of(facts);
    this.ladder =
        new Ladder(
            (int) facts.number("gel.ladder.fewest"),
            facts.number("gel.ladder.share"),
            facts.number("gel.ladder.widest"),
            facts.number("gel.ladder.uneven"));
  }

  public PairBands compare(GelBands gel, LaneBands csf, LaneBands serum, double height) {
    double sigma = gel.sigma();
    double foretold = gel.tilt().drop(csf.place().xCentre(), serum.place().xCentre());
    List<Alignment> alignments =
        new AlignmentSearch(facts, sigma, height)
            .search(csf.bands(), serum.bands(), foretold, height / 2);
    double spread =
        Math.hypot(
            facts.number("gel.matching.spread") * sigma, facts.number("gel.matching.pixels"));
    List<CountDistribution> parts = new ArrayList<>();
    double[] weights = new double[alignments.size()];
    double shared = 0;
    for (int i = 0; i < weights.length; i++) {
      Alignment a = alignments.get(i);
      double[] both =
          shared(
              csf,
              serum,
              a,
              Matching.of(csf.bands(), serum.bands(), a, spread, facts.number("gel.matching.top")));
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
    Matching matching =
        Matching.of(csf.bands(), serum.bands(), best, spread, facts.number("gel.matching.top"));
    return verdict(
        gel,
        csf,
        serum,
        new Outcome(best, matching, spread, CountDistribution.of(parts, weights), shared));
  }

  private record Outcome(
      Alignment best, Matching matching, double spread, CountDistribution only, double shared) {}

  private PairBands verdict(GelBands gel, LaneBands csf, LaneBands serum, Outcome o) {
    double[] both = shared(csf, serum, o.best, o.matching);
    List<Integer> counterpart = new ArrayList<>();
    List<Double> response = new ArrayList<>();
    List<Double> rows = new ArrayList<>();
    boolean[] met = new boolean[serum.bands().size()];
    double[] distances = new double[both.length];
    int n = 0;
    int shared = 0;
    for (int i = 0; i < both.length; i++) {
      Band c = csf.bands().get(i);
      boolean isShared = c.probability() >= 0.5 && both[i] >= 0.5;
      shared += isShared ? 1 : 0;
      int j = o.matching.counterpart()[i];
      boolean isPaired = o.matching.isMatched(i) && both[i] >= 0.5;
      counterpart.add(isPaired ? j : -1);
      response.add(response(serum, o.best.toSerum(c.y()), gel.sigma()) / c.height());
      if (isPaired && c.probability() > 0.3) {
        met[j] = true;
        if (isShared) {
          rows.add(serum.bands().get(j).y());
          distances[n++] = (o.best.toSerum(c.y()) - serum.bands().get(j).y()) / o.spread;
        }
      }
    }
    int serumBands = 0;
    int alone = 0;
    for (int j = 0; j < met.length; j++) {
      Band s = serum.bands().get(j);
      if (s.probability() >= 0.5) {
        serumBands++;
        double answer = response(csf, o.best.toCsf(s.y()), gel.sigma());
        alone += !met[j] && answer < facts.number("gel.matching.response") * s.height() ? 1 : 0;
      }
    }
    double accident =
        5
            * o.spread
            * csf.bands().stream().filter(b -> b.probability() > 0.5).count()
            / (0.7 * csf.rows());
    double other =
        identity.probabilityOfOther(Arrays.copyOf(distances, n), alone, accident, o.best.strain());
    boolean isLadder = ladder.isLadder(rows, serumBands, gel.sigma());
    return new PairBands(counterpart, response, o.only, shared, alone, o.shared, isLadder, other);
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
      double seen =
          (answer - facts.number("gel.matching.response"))
              / Math.hypot(facts.number("gel.matching.response-spread"), noise);
      both[i] = 1 / (1 + Math.exp(-1.7 * seen)) * facts.number("gel.matching.unfitted");
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
