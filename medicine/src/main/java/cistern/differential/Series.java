package cistern.differential;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.fact.Status;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One published count of one disease.
 *
 * @param group the disease, or {@code any} for a table that stands for all
 * @param rate what was counted
 * @param name the series
 * @param count how many of how many
 * @param status how well the frequency is supported
 * @param grounds frequency and number together
 */
record Series(
    String group, Rate rate, String name, Proportion count, Status status, Grounds grounds) {

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

  /** The key is {@code count.<disease>.<rate>.<series>}; a rate may hold a point. */
  private static Series parse(String key, Facts facts) {
    String name = key.substring(PREFIX.length());
    int first = name.indexOf('.');
    int last = name.lastIndexOf('.');
    String rate = name.substring(first + 1, last);
    double of = facts.number(key + OF);
    Optional<Fact> percent = facts.find(key + ".percent");
    String frequency = percent.isPresent() ? key + ".percent" : key + ".positive";
    double positive =
        percent.isPresent() ? of * facts.number(frequency) / PER_CENT : facts.number(frequency);
    return new Series(
        name.substring(0, first),
        Rate.parse(rate).orElseThrow(() -> new IllegalStateException("no rate " + rate)),
        name.substring(last + 1),
        new Proportion(positive, of),
        facts.fact(frequency).status(),
        facts.grounds(frequency, key + OF));
  }

  /** Whether it comes from a method that is no longer used. */
  boolean isOldMethod() {
    return name.startsWith("old-method");
  }
}
