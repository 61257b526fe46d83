package cistern.exchange.lab;

import java.util.Optional;

/**
 * A code for what was measured, and the text beside it.
 *
 * @param system whose code it is: {@link #LOINC}, {@link #OWN}, or as the sender writes it
 * @param code as sent; empty when only a text stands there
 * @param text the name beside the code; may be empty
 */
public record Coding(String system, String code, String text) {

  /** The system of LOINC, as FHIR writes it. */
  public static final String LOINC = "http://loinc.org";

  /** The system of this program's own codes, for what has no confirmed LOINC code. */
  public static final String OWN = "https://cistern.example/code";

  /** The extension of an Observation that says when the sample was measured. */
  public static final String MEASURED_AT = "https://cistern.example/extension/measured-at";

  /** One of this program's own codes. */
  public static Coding own(String code) {
    return new Coding(OWN, code, "");
  }

  /** Which tube an own code names behind the fluid: {@code first} or {@code last}. */
  Optional<String> tube() {
    if (!system.equals(OWN)) {
      return Optional.empty();
    }
    return code.endsWith(".first")
        ? Optional.of("first")
        : code.endsWith(".last") ? Optional.of("last") : Optional.empty();
  }

  /** The code without a tube. */
  String withoutTube() {
    return tube().map(t -> code.substring(0, code.length() - t.length() - 1)).orElse(code);
  }

  /** The code or, where there is none, the text: what a list of the not understood shows. */
  public String toText() {
    return code.isEmpty() ? text : code + (text.isEmpty() ? "" : " " + text);
  }
}
