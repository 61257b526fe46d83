package cistern.differential;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One published count of one disease.
 *
 * @param disease the disease
 * @param trait what was counted
 * @param count how many of how many
 * @param grounds frequency and number together
 */
record Series(Disease disease, Trait trait, Proportion count, Grounds grounds) {

  private static final String PREFIX = "count.";
  private static final String OF = ".of";
  private static final double PER_CENT = 100;

  /** Every series of the fact tables, in their order. */
  static List<Series> all(Facts facts) {
    List<Series> all = new ArrayList<>();
    for (Fact fact : facts.all()) {
      if (fact.key().startsWith(PREFIX) && fact.key().endsWith(OF)) {
        all.add(parse(fact.key().substring(0, fact.key().length() - OF.length()), facts));
      }
    }
    return all;
  }

  /** The key is {@code count.<disease>.<trait>.<series>}. */
  private static Series parse(String key, Facts facts) {
    String[] parts = key.split("\\.", -1);
    double of = facts.number(key + OF);
    Optional<Fact> percent = facts.find(key + ".percent");
    String frequency = percent.isPresent() ? key + ".percent" : key + ".positive";
    double positive =
        percent.isPresent() ? of * facts.number(frequency) / PER_CENT : facts.number(frequency);
    return new Series(
        Disease.parse(parts[1]).orElseThrow(() -> new IllegalStateException("no disease " + key)),
        Trait.parse(parts[2]).orElseThrow(() -> new IllegalStateException("no trait " + key)),
        new Proportion(positive, of),
        facts.grounds(frequency, key + OF));
  }
}
