package cistern.differential;

import cistern.fact.Facts;
import cistern.fact.Status;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What is believed of every rate of every disease in the model, from the published counts. Studies
 * differ more than chance, so a count weighs no more than an effective number of persons: what the
 * spread between its series allows, and never more than a cap. A disease without a count of its own
 * borrows that of the mixed controls, widened; where they have none either, the rate is that of MS
 * and moves nothing. Rates given the bands are one table for all.
 */
final class Beliefs {

  private static final String CAP = "differential.effective-sample.";

  private final List<Series> series;
  private final Facts facts;
  private final List<Belief> all = new ArrayList<>();
  private final Map<Disease, Map<Rate, Integer>> places = new EnumMap<>(Disease.class);
  private final Map<Rate, Integer> shared = new EnumMap<>(Rate.class);

  Beliefs(List<Disease> diseases, List<Series> series, Facts facts) {
    this.series = series;
    this.facts = facts;
    for (Disease disease : diseases) {
      Map<Rate, Integer> own = new EnumMap<>(Rate.class);
      for (Rate rate : Rate.values()) {
        own.put(rate, place(disease, rate));
      }
      places.put(disease, own);
    }
  }

  private int place(Disease disease, Rate rate) {
    List<Series> own = of(disease.code(), rate);
    if (own.isEmpty() && rate.isGivenBands()) {
      return shared.computeIfAbsent(rate, r -> add(pooled(forAll(r))));
    }
    if (!own.isEmpty()) {
      return disease == Disease.MS
          ? shared.computeIfAbsent(rate, r -> add(pooled(own)))
          : add(pooled(own));
    }
    List<Series> mixed = of(Disease.OTHER.code(), rate);
    return mixed.isEmpty()
        ? shared.computeIfAbsent(rate, r -> add(pooled(of(Disease.MS.code(), r))))
        : add(pooled(mixed).withAtMost(facts.number(CAP + "stand-in")));
  }

  /** The table that stands for all diseases: its own, or that of MS. */
  private List<Series> forAll(Rate rate) {
    List<Series> any = of(CountTable.ANY, rate);
    return any.isEmpty() ? of(Disease.MS.code(), rate) : any;
  }

  private int add(Belief belief) {
    all.add(belief);
    return all.size() - 1;
  }

  List<Series> of(String group, Rate rate) {
    return series.stream().filter(s -> s.group().equals(group) && s.rate() == rate).toList();
  }

  /** The belief after some series of one rate. */
  Belief pooled(List<Series> some) {
    double mean = some.stream().mapToDouble(s -> s.count().share()).average().orElse(Belief.HALF);
    return Belief.of(mean, effective(some, mean));
  }

  private double effective(List<Series> some, double mean) {
    double seen = some.stream().mapToDouble(this::weight).sum();
    if (some.size() < 2) {
      return Math.min(seen, facts.number(CAP + "single-series"));
    }
    double spread =
        some.stream().mapToDouble(s -> Math.pow(s.count().share() - mean, 2)).sum()
            / (some.size() - 1);
    double allowed = spread > 0 ? mean * (1 - mean) / spread : seen;
    double capped = Math.min(Math.min(seen, facts.number(CAP + "most")), allowed);
    return Math.max(capped, Math.min(seen, facts.number(CAP + "least")));
  }

  private double weight(Series one) {
    double of = one.count().of();
    return one.isOldMethod() ? Math.min(of, facts.number(CAP + "old-method")) : of;
  }

  /** How many rows of a disease are read or second-hand. */
  static long supported(Disease disease, List<Series> series) {
    return series.stream()
        .filter(s -> s.group().equals(disease.code()))
        .filter(s -> s.status() == Status.READ || s.status() == Status.SECOND_HAND)
        .count();
  }

  /** The parameter of a disease and a rate. */
  int place(Rate rate, Disease disease) {
    return places.getOrDefault(disease, Map.of()).getOrDefault(rate, 0);
  }

  double[] means() {
    return all.stream().mapToDouble(Belief::mean).toArray();
  }

  Belief at(int place) {
    return all.get(place);
  }

  int size() {
    return all.size();
  }
}
