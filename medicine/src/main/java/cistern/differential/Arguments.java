package cistern.differential;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What speaks for and against a disease, from published counts. A finding speaks for a disease when
 * it is commoner there than in MS; for MS, when it is commoner there than among mixed controls.
 */
final class Arguments {

  private static final double LEVEL = 0.95;
  private static final double PER_CENT = 100;

  private final List<Series> all;

  Arguments(List<Series> all) {
    this.all = List.copyOf(all);
  }

  /** One argument for each disease that any observation speaks of. */
  List<Argument> of(Observations observations) {
    return Stream.of(Disease.values())
        .map(d -> of(d, observations))
        .filter(a -> !a.reasonsFor().isEmpty() || !a.reasonsAgainst().isEmpty())
        .toList();
  }

  private Argument of(Disease disease, Observations observations) {
    List<String> reasonsFor = new ArrayList<>();
    List<String> reasonsAgainst = new ArrayList<>();
    Grounds grounds = Grounds.MEASURED;
    Disease against = disease == Disease.MS ? Disease.OTHER : Disease.MS;
    for (Observation observation : observations.heard()) {
      OptionalDouble elsewhere = mean(against, observation);
      if (elsewhere.isPresent()) {
        for (Series series : of(disease, observation)) {
          boolean isFor = chance(series.count().share(), observation) > elsewhere.getAsDouble();
          (isFor ? reasonsFor : reasonsAgainst).add(words(series, observation));
          grounds = grounds.and(series.grounds());
        }
      }
    }
    return new Argument(disease, reasonsFor, reasonsAgainst, grounds);
  }

  private List<Series> of(Disease disease, Observation observation) {
    return all.stream()
        .filter(s -> s.disease() == disease && s.trait() == observation.trait())
        .toList();
  }

  /** The unweighted mean of the series of a disease, as a chance of what was observed. */
  private OptionalDouble mean(Disease disease, Observation observation) {
    return of(disease, observation).stream()
        .mapToDouble(s -> chance(s.count().share(), observation))
        .average();
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
