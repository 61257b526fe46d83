package cistern.fact;

import java.util.Optional;

/**
 * One constant, limit, count or rule with everything a reader needs to trust or doubt it.
 *
 * @param key the name by which policy can change it
 * @param value the value in force
 * @param unit UCUM, {@code 1} for plain numbers, empty for words
 * @param status how well it is supported
 * @param cited the publications or the practice it comes from
 * @param place where in the source; may be empty
 * @param standard the value that local policy replaced, if it did
 */
public record Fact(
    String key,
    FactValue value,
    String unit,
    Status status,
    Provenance cited,
    String place,
    Optional<FactValue> standard) {

  /** Checks that key and source are given. */
  public Fact {
    if (key.isBlank() || cited.words().isBlank()) {
      throw new IllegalArgumentException("a fact has a key and a source: " + key);
    }
  }

  /** Whether local policy changed it. */
  public boolean isChanged() {
    return standard.isPresent();
  }

  /** The publication or practice it comes from, in words. */
  public String source() {
    return cited.words();
  }

  /** The source with the place in it. */
  public String citation() {
    return place.isEmpty() ? source() : source() + ", " + place;
  }

  /** This fact under another key: the same of one laboratory. */
  Fact withKey(String other) {
    return new Fact(other, value, unit, status, cited, place, standard);
  }

  /** This fact with a local value, which keeps the standard one beside it. */
  Fact withLocal(FactValue local, String localSource) {
    return new Fact(
        key,
        local,
        unit,
        Status.LOCAL,
        Provenance.ofWords(localSource),
        "",
        Optional.of(standard.orElse(value)));
  }
}
