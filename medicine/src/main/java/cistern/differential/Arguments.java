package cistern.differential;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What speaks for and against a disease, from published counts. A finding speaks for a disease when
 * it is commoner there than in MS; for MS, when it is commoner there than among mixed controls.
 */
final class Arguments {

  private static final double LEVEL = 0.95;
  private static final double PER_CENT = 100;

  private final Map<Disease, Map<Trait, List<Told>>> all = new EnumMap<>(Disease.class);

  /** A series with its words, which are always the same and take a while to compute. */
  private static final class Told {
    private final Series series;
    private String words = "";

    Told(Series series) {
      this.series = series;
    }

    double chance(Observation observation) {
      double found = series.count().share();
      return observation.isFound() ? found : 1 - found;
    }

    /** Computing them twice gives the same. */
    String words() {
      if (words.isEmpty()) {
        words = Arguments.words(series);
      }
      return words;
    }
  }

  Arguments(List<Series> all) {
    for (Series series : all) {
      this.all
          .computeIfAbsent(series.disease(), d -> new EnumMap<>(Trait.class))
          .computeIfAbsent(series.trait(), t -> new ArrayList<>())
          .add(new Told(series));
    }
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
        for (Told told : of(disease, observation)) {
          boolean isFor = told.chance(observation) > elsewhere.getAsDouble();
          (isFor ? reasonsFor : reasonsAgainst).add(observation.toText() + told.words());
          grounds = grounds.and(told.series.grounds());
        }
      }
    }
    return new Argument(disease, reasonsFor, reasonsAgainst, grounds);
  }

  private List<Told> of(Disease disease, Observation observation) {
    return all.getOrDefault(disease, Map.of()).getOrDefault(observation.trait(), List.of());
  }

  /** The unweighted mean of the series of a disease, as a chance of what was observed. */
  private OptionalDouble mean(Disease disease, Observation observation) {
    List<Told> series = of(disease, observation);
    return series.isEmpty()
        ? OptionalDouble.empty()
        : series.stream().mapToDouble(told -> told.chance(observation)).average();
  }

  private static String words(Series series) {
    Proportion.Ends ends = series.count().printed(LEVEL);
    return "; found in %s %% (%s to %s %%) of %s"
        .formatted(
            percent(series.count().share()),
            percent(ends.lower()),
            percent(ends.upper()),
            Printed.decimals(series.count().of(), 0));
  }

  private static String percent(double share) {
    return Printed.decimals(share * PER_CENT, 0);
  }
}
