package cistern.differential;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What speaks for and against the diseases that have counts, but too few for a number. */
final class Arguments {

  private static final double LEVEL = 0.95;
  private static final double PER_CENT = 100;

  private final Model model;

  Arguments(Model model) {
    this.model = model;
  }

  /** One argument for each such disease that any observation speaks of. */
  List<Argument> of(Observations observations) {
    return Stream.of(Disease.values())
        .filter(d -> !model.diseases().contains(d))
        .map(d -> of(d, observations))
        .filter(a -> !a.reasonsFor().isEmpty() || !a.reasonsAgainst().isEmpty())
        .toList();
  }

  private Argument of(Disease disease, Observations observations) {
    List<String> reasonsFor = new ArrayList<>();
    List<String> reasonsAgainst = new ArrayList<>();
    Grounds grounds = Grounds.MEASURED;
    for (Observation observation : observations.heard()) {
      for (Series series : model.beliefs().of(disease.code(), observation.trait().rate())) {
        boolean isFor = chance(series.count().share(), observation) > inMs(observation);
        (isFor ? reasonsFor : reasonsAgainst).add(words(series, observation));
        grounds = grounds.and(series.grounds());
      }
    }
    return new Argument(disease, reasonsFor, reasonsAgainst, grounds);
  }

  private double inMs(Observation observation) {
    double found = model.mean(Disease.MS, observation.trait().rate()).orElse(Belief.HALF);
    return chance(found, observation);
  }

  private static double chance(double found, Observation observation) {
    return observation.isFound() ? found : 1 - found;
  }

  private static String words(Series series, Observation observation) {
    Proportion.Ends ends = series.count().printed(LEVEL);
    return "%s; found in %s %% (%s to %s %%) of %s"
        .formatted(
            observation.toText(),
            percent(series.count().share()),
            percent(ends.lower()),
            percent(ends.upper()),
            Printed.decimals(series.count().of(), 0));
  }

  private static String percent(double share) {
    return Printed.decimals(share * PER_CENT, 0);
  }
}
