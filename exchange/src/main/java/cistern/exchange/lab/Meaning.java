package cistern.exchange.lab;

import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import java.util.Optional;

/**
 * What a code stands for.
 *
 * @param subject an analyte ({@code albumin}), {@code bands.…}, {@code serology.…}, {@code
 *     computed} and other words of the tables
 * @param in the fluid that the code itself names
 * @param unit the unit that a mapping gives where a message has none
 */
public record Meaning(String subject, Optional<Compartment> in, Optional<String> unit) {

  /** The meaning of a text such as {@code albumin.csf}, {@code albumin} or {@code bands.result}. */
  public static Meaning parse(String text) {
    int dot = text.lastIndexOf('.');
    Optional<Compartment> in = Compartment.parse(text.substring(dot + 1));
    String subject = in.isPresent() && dot > 0 ? text.substring(0, dot) : text;
    return new Meaning(subject, dot > 0 ? in : Optional.empty(), Optional.empty());
  }

  /** The analyte, if it is one. */
  public Optional<Analyte> analyte() {
    return Analyte.parse(subject);
  }
}
