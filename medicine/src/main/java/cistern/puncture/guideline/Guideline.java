package cistern.puncture.guideline;

import cistern.fact.Facts;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Somebody whose limits or intervals are shown: a society, a handbook, the clinic itself.
 *
 * @param code the name in the keys of facts
 * @param name as printed
 * @param year of the edition, where it is known
 * @param scope what it was written for
 */
public record Guideline(String code, String name, OptionalInt year, String scope) {

  /** The guideline of a code. */
  public static Guideline of(Facts facts, String code) {
    String key = "guideline." + code + ".";
    OptionalInt year =
        facts.find(key + "year").isPresent()
            ? OptionalInt.of((int) facts.number(key + "year"))
            : OptionalInt.empty();
    return new Guideline(code, facts.word(key + "name"), year, facts.word(key + "scope"));
  }

  /** The name with its year, where the name does not hold it already. */
  public String title() {
    Optional<String> dated =
        year.isPresent() && !name.contains(Integer.toString(year.getAsInt()))
            ? Optional.of(name + " " + year.getAsInt())
            : Optional.empty();
    return dated.orElse(name);
  }
}
