package cistern.differential;

import cistern.differential.CountTable.Row;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The published counts of every disease, tabled once for some facts. */
final class CountTables {

  private static final double LEVEL = 0.95;

  /** Enough for the ends of the middle 95 %: the first is at 0.5/20, the last at 19.5/20. */
  private static final int QUANTILES = 20;

  private record Place(CountTable table, Rate rate) {}

  private final List<Place> all = new ArrayList<>();

  CountTables(Beliefs beliefs) {
    Set<String> groups = new LinkedHashSet<>();
    Stream.of(Disease.values()).map(Disease::code).forEach(groups::add);
    groups.add(CountTable.ANY);
    for (String group : groups) {
      for (Rate rate : Rate.values()) {
        List<Series> series = beliefs.of(group, rate);
        if (!series.isEmpty()) {
          all.add(new Place(table(group, rate, series, beliefs.pooled(series)), rate));
        }
      }
    }
  }

  private static CountTable table(String group, Rate rate, List<Series> series, Belief belief) {
    double[] quantiles = belief.quantiles(QUANTILES);
    return new CountTable(
        group,
        rate.code(),
        rate.term(),
        series.stream().map(CountTables::row).toList(),
        belief.mean(),
        new Proportion.Ends(quantiles[0], quantiles[QUANTILES - 1]),
        belief.effective());
  }

  private static Row row(Series series) {
    return new Row(series.name(), series.count(), series.count().printed(LEVEL), series.grounds());
  }

  /** The tables that some observations are weighed by. */
  List<CountTable> of(Observations observations) {
    Set<Rate> read = EnumSet.noneOf(Rate.class);
    observations.heard().stream().map(Observation::trait).forEach(t -> addRates(t, read));
    return all.stream().filter(p -> read.contains(p.rate)).map(Place::table).toList();
  }

  private static void addRates(Trait trait, Set<Rate> read) {
    read.add(trait.rate());
    read.add(trait.rateWithoutBands());
    if (trait.witness() == Witness.INTRATHECAL_SYNTHESIS) {
      read.addAll(List.of(Rate.BANDS, Rate.BANDS_AFTER_MRI));
    }
  }
}
