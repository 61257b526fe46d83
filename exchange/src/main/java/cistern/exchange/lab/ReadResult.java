package cistern.exchange.lab;

import cistern.measurement.Compartment;
import java.util.Optional;

/**
 * A result whose meaning, fluid, value and unit are known.
 *
 * @param from the result as sent
 * @param subject an analyte's code, {@code bands.…}, {@code serology.…} or {@code appearance}
 * @param in the fluid; empty only for what has none
 * @param number the value, where it is one
 * @param unit UCUM; empty where the value has none
 * @param word the answer, where the value is a word
 */
record ReadResult(
    ReportedResult from,
    String subject,
    Optional<Compartment> in,
    Optional<NumberText> number,
    String unit,
    String word) {

  /** What may stand only once in a work-up. */
  String key() {
    return subject + in.map(c -> "." + c.code()).orElse("") + tube().map(t -> "." + t).orElse("");
  }

  /** Which tube it was counted in, where that is said. */
  Optional<String> tube() {
    for (Coding code : from.codes()) {
      Optional<String> tube = code.tube();
      if (tube.isPresent()) {
        return tube;
      }
    }
    return Optional.empty();
  }

  boolean isIn(Compartment fluid) {
    return in.filter(c -> c == fluid).isPresent();
  }

  /** Whether another says exactly the same. */
  boolean isSame(ReadResult other) {
    return key().equals(other.key())
        && number.equals(other.number)
        && unit.equals(other.unit)
        && word.equals(other.word);
  }
}
