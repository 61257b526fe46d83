package cistern.differential;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * P(d | x) = π_d·f_d(x) / Σ π_k·f_k(x) over the diseases with enough counts and the class of other
 * or unlisted diseases. Intervals come from a rank-1 lattice over all rates and the prior range: a
 * quadrature rule, so that the same input always gives the same answer.
 */
final class Model {

  private static final double ROUNDING = 1e-12;

  private final List<Disease> diseases;
  private final double[] shares;
  private final List<Series> series;
  private final Beliefs beliefs;
  private final Lattice lattice;

  Model(Facts facts) {
    series = Series.all(facts);
    double enough = facts.number("differential.rows-for-a-posterior");
    diseases =
        Stream.of(Disease.values())
            .filter(d -> d == Disease.MS || facts.find(split(d)).isPresent())
            .filter(d -> d == Disease.OTHER || Beliefs.supported(d, series) >= enough)
            .toList();
    shares = shares(facts);
    beliefs = new Beliefs(diseases, series, facts);
    lattice = Lattice.of(beliefs, facts);
  }

  private static String split(Disease disease) {
    return "prior.split." + disease.code();
  }

  /** The share of each disease in what is not MS; the share of a disease left out goes to other. */
  private double[] shares(Facts facts) {
    double[] all = new double[diseases.size()];
    for (Disease disease : Disease.values()) {
      double share = facts.find(split(disease)).map(f -> facts.number(f.key())).orElse(0.0);
      all[diseases.indexOf(diseases.contains(disease) ? disease : Disease.OTHER)] += share;
    }
    double sum = Arrays.stream(all).sum();
    return Arrays.stream(all).map(share -> share / sum).toArray();
  }

  List<Disease> diseases() {
    return diseases;
  }

  Beliefs beliefs() {
    return beliefs;
  }

  double share(Disease disease) {
    return shares[diseases.indexOf(disease)];
  }

  private List<Likelihood> likelihoods(List<Observation> heard, boolean isAfterMri) {
    return diseases.stream().map(d -> new Likelihood(d, heard, isAfterMri, beliefs)).toList();
  }

  private static double[][] after(List<Likelihood> likelihoods, double[] rates) {
    double[][] after = new double[likelihoods.size()][];
    for (int d = 0; d < after.length; d++) {
      after[d] = likelihoods.get(d).after(rates);
    }
    return after;
  }

  private double[][][] spread(List<Likelihood> likelihoods) {
    double[][][] spread = new double[lattice.points()][][];
    for (int point = 0; point < spread.length; point++) {
      spread[point] = after(likelihoods, lattice.rates(point));
    }
    return spread;
  }

  /** What some observations say: the weights of all, and the posteriors where a prior is stated. */
  Heard hear(List<Observation> heard, Optional<Prior> prior) {
    List<Likelihood> likelihoods = likelihoods(heard, prior.map(Prior::isAfterMri).orElse(false));
    double[][] central = after(likelihoods, beliefs.means());
    double[][][] spread = spread(likelihoods);
    return new Heard(
        weights(heard, central, spread),
        prior.map(p -> posteriors(heard, p, central, spread)).orElse(List.of()));
  }

  /**
   * What some observations say.
   *
   * @param weights of every observation for every disease
   * @param posteriors of every disease; empty without a prior
   */
  record Heard(List<Weight> weights, List<Posterior> posteriors) {}

  private List<Weight> weights(List<Observation> heard, double[][] central, double[][][] spread) {
    List<Weight> weights = new ArrayList<>();
    double[] moved = new double[spread.length];
    for (int step = 1; step <= heard.size(); step++) {
      for (int point = 0; point < moved.length; point++) {
        moved[point] = moveOfMs(spread[point], step);
      }
      Observation observation = heard.get(step - 1);
      double log = moveOfMs(central, step);
      weights.add(
          new Weight(observation, Disease.MS, log, Optional.of(Tails.of(moved).around(log))));
      for (int d = 1; d < diseases.size(); d++) {
        weights.add(
            new Weight(
                observation, diseases.get(d), moveAgainstMs(central, d, step), Optional.empty()));
      }
    }
    return weights;
  }

  /** How much one observation moves MS against the rest, natural logarithm. */
  private double moveOfMs(double[][] after, int step) {
    double ratio = after[0][step] / after[0][step - 1];
    return settled(Math.log(ratio * rest(after, step - 1) / rest(after, step)));
  }

  private double rest(double[][] after, int step) {
    double rest = 0;
    for (int d = 1; d < after.length; d++) {
      rest += shares[d] * after[d][step];
    }
    return rest;
  }

  /** Rates that cancel leave nothing, not a rounding error. */
  private static double settled(double log) {
    return Math.abs(log) < ROUNDING ? 0 : log;
  }

  /** How much one observation moves another disease against MS, natural logarithm. */
  private static double moveAgainstMs(double[][] after, int disease, int step) {
    return settled(
        Math.log(
            after[disease][step] / after[disease][step - 1] * after[0][step - 1] / after[0][step]));
  }

  private List<Posterior> posteriors(
      List<Observation> heard, Prior prior, double[][] central, double[][][] spread) {
    double[] middle = posterior(central, heard.size(), prior.middle());
    double[][] values = new double[diseases.size()][spread.length];
    for (int point = 0; point < spread.length; point++) {
      double before = prior.low() + lattice.share(point) * (prior.high() - prior.low());
      double[] here = posterior(spread[point], heard.size(), before);
      for (int d = 0; d < here.length; d++) {
        values[d][point] = here[d];
      }
    }
    List<Posterior> posteriors = new ArrayList<>();
    for (int d = 0; d < middle.length; d++) {
      Disease disease = diseases.get(d);
      posteriors.add(
          new Posterior(
              disease, middle[d], Tails.of(values[d]).around(middle[d]), grounds(disease, heard)));
    }
    return posteriors;
  }

  private double[] posterior(double[][] after, int step, double prior) {
    double[] posterior = new double[after.length];
    double sum = 0;
    for (int d = 0; d < posterior.length; d++) {
      posterior[d] = (d == 0 ? prior : (1 - prior) * shares[d]) * after[d][step];
      sum += posterior[d];
    }
    for (int d = 0; d < posterior.length; d++) {
      posterior[d] /= sum;
    }
    return posterior;
  }

  /** The posterior of every disease at the means of the rates. */
  double[] posterior(List<Observation> heard, boolean isAfterMri, double prior) {
    double[][] after = after(likelihoods(heard, isAfterMri), beliefs.means());
    return posterior(after, heard.size(), prior);
  }

  private Grounds grounds(Disease disease, List<Observation> heard) {
    return series.stream()
        .filter(s -> s.group().equals(disease.code()))
        .filter(s -> heard.stream().anyMatch(o -> o.trait().rate() == s.rate()))
        .map(Series::grounds)
        .reduce(Grounds.MEASURED, Grounds::and);
  }

  /** The chance, in every disease, that the observation by which two lists differ is found. */
  double[] chances(List<Observation> found, List<Observation> missed, boolean isAfterMri) {
    double[][] with = after(likelihoods(found, isAfterMri), beliefs.means());
    double[][] without = after(likelihoods(missed, isAfterMri), beliefs.means());
    double[] chances = new double[with.length];
    for (int d = 0; d < chances.length; d++) {
      double likely = with[d][found.size()];
      chances[d] = likely / (likely + without[d][missed.size()]);
    }
    return chances;
  }

  /** The mean of a rate in every disease. */
  double[] means(Rate rate) {
    return diseases.stream().mapToDouble(d -> beliefs.at(beliefs.place(rate, d)).mean()).toArray();
  }

  /** The mean of what is believed of a rate in a disease of the model. */
  OptionalDouble mean(Disease disease, Rate rate) {
    return diseases.contains(disease)
        ? OptionalDouble.of(beliefs.at(beliefs.place(rate, disease)).mean())
        : OptionalDouble.empty();
  }
}
