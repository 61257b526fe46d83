package cistern.exchange.deidentified;

import cistern.exchange.json.Json;
import cistern.exchange.lab.SentWorkup;
import cistern.fact.Facts;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

/**
 * How many persons share what anybody can see of them: age in steps of {@code deidentify.age.group}
 * years, sex, and the year of the draw as written. What a row does not hold is a value of its own.
 */
public final class PersonGroups {

  private final Facts facts;
  private final int years;
  private final Map<Shared, Set<String>> persons = new HashMap<>();

  private PersonGroups(Facts facts) {
    this.facts = facts;
    this.years = (int) facts.number("deidentify.age.group");
  }

  /** No persons yet. */
  public static PersonGroups of(Facts facts) {
    return new PersonGroups(facts);
  }

  private record Shared(String age, String sex, String year) {}

  /** Adds the person of a work-up that is already de-identified. */
  public void add(Json.Structure workup) {
    SentWorkup said = new SentWorkup(workup, facts);
    String age =
        said.text("person", "ageYears")
            .map(text -> Integer.toString((int) (Double.parseDouble(text) / years)))
            .or(() -> said.text("person", "ageDays").map(days -> "under " + years))
            .orElse("");
    String year =
        said.text("draws", "csf", "at")
            .or(() -> said.text("draws", "serum", "at"))
            .map(at -> at.substring(0, 4))
            .orElse("");
    Shared shared = new Shared(age, said.text("person", "sex").orElse(""), year);
    persons
        .computeIfAbsent(shared, group -> new HashSet<>())
        .add(said.text("person", "id").orElse(said.id()));
  }

  /** How many groups there are. */
  public int count() {
    return persons.size();
  }

  /** The persons of the smallest group; none when nobody was added. */
  public OptionalInt smallest() {
    return persons.values().stream().mapToInt(Set::size).min();
  }

  /** How many groups have fewer persons than this. */
  public long under(int most) {
    return persons.values().stream().filter(group -> group.size() < most).count();
  }
}
