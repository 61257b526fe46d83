package cistern.differential;

import cistern.fact.Facts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/** The model under one set of facts: published counts, each heard once. */
public final class Differential {

  private final Model model;
  private final Practice practice;
  private final Arguments arguments;
  private final CountTables counts;
  private final double evenOdds;

  private Differential(Facts facts) {
    model = new Model(facts);
    practice = new Practice(model, facts);
    arguments = new Arguments(model);
    counts = new CountTables(model.beliefs());
    evenOdds = facts.number("next.even-odds");
  }

  /** The model under some facts. */
  public static Differential of(Facts facts) {
    return new Differential(facts);
  }

  /** What the observations say; a number for a disease only when a prior is stated. */
  public DifferentialResult interpret(
      Observations observations, Optional<Prior> prior, boolean isAlike) {
    Model.Heard heard = model.hear(observations.heard(), prior);
    return new DifferentialResult(
        prior,
        split(),
        heard.posteriors(),
        arguments.of(observations),
        heard.weights(),
        counts.of(observations),
        practice(observations, isAlike),
        Assumptions.of(prior));
  }

  private static boolean isAfterMri(Optional<Prior> prior) {
    return prior.map(Prior::isAfterMri).orElse(false);
  }

  private SequencedMap<Disease, Double> split() {
    SequencedMap<Disease, Double> split = new LinkedHashMap<>();
    model.diseases().stream()
        .filter(d -> d != Disease.MS)
        .forEach(d -> split.put(d, model.share(d)));
    return split;
  }

  private List<PracticeCompared> practice(Observations observations, boolean isAlike) {
    List<PracticeCompared> all =
        new ArrayList<>(observations.has(Trait.BANDS) ? practice.ofBands() : List.of());
    if (isAlike) {
      all.add(practice.ofAlikeBands());
    }
    return all;
  }

  /** What one more trait would do to the probability of MS. */
  public Outcome outcome(Observations observations, Optional<Prior> prior, Trait trait) {
    double[] now = posterior(observations, prior);
    Observations found = observations.with(new Observation(trait, true));
    Observations missed = observations.with(new Observation(trait, false));
    return Outcome.of(now, model.chances(found.heard(), missed.heard(), isAfterMri(prior)));
  }

  /** What a second puncture would do after one without bands. */
  public Outcome outcomeOfRepeat(Observations observations, Optional<Prior> prior) {
    return Outcome.of(posterior(observations, prior), model.means(Rate.BANDS_GAINED));
  }

  private double[] posterior(Observations observations, Optional<Prior> prior) {
    return model.posterior(
        observations.heard(), isAfterMri(prior), prior.map(Prior::middle).orElse(evenOdds));
  }
}
