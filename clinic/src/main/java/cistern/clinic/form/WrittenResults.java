package cistern.clinic.form;

import cistern.exchange.lab.DecimalMark;
import cistern.exchange.lab.NumberText;
import cistern.exchange.ucum.Conversions;
import cistern.exchange.ucum.Spellings;
import cistern.fact.Facts;
import cistern.measurement.CanonicalUnit;
import cistern.measurement.Sample;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Results as people type them ({@code 0,22 g/L}, {@code <10mg/l}, {@code 220 H µg/mL}, {@code
 * 220}), brought into the one form in which a field holds them: a number with a point, a space, a
 * unit. A number without a unit takes the one that the laboratory used last for the same sample;
 * what may be read in two ways is asked about and not taken.
 */
public final class WrittenResults {

  private static final String FLAG = "[(\\[]?(?:[hH]{1,2}|[lL]{1,2}|\\*+|\\++|!|↑+|↓+)[)\\]]?";
  private static final Pattern FIRST = Pattern.compile("^" + FLAG + "(?:\\s+|$)");
  private static final Pattern LAST = Pattern.compile("\\s+" + FLAG + "$");
  private static final Pattern RANGE =
      Pattern.compile("\\s*[(\\[][^()\\[\\]]*\\d[^()\\[\\]]*[)\\]]\\s*$");

  private final Spellings spellings;
  private final Map<String, String> unitsBySample;

  private WrittenResults(Spellings spellings, Map<String, String> unitsBySample) {
    this.spellings = spellings;
    this.unitsBySample = Map.copyOf(unitsBySample);
  }

  /**
   * A reader of typed results.
   *
   * @param unitsBySample the unit that the laboratory used last, by the code of the sample
   */
  public static WrittenResults of(Facts facts, Map<String, String> unitsBySample) {
    return new WrittenResults(Spellings.of(Conversions.of(facts)), unitsBySample);
  }

  /** The unit that stands for a number without one; empty when none is known. */
  public String unit(Sample sample) {
    return unitsBySample.getOrDefault(sample.code(), "");
  }

  /** What came of a typed text. */
  sealed interface Reading {
    /**
     * It can be read in one way only.
     *
     * @param text as a field holds it
     */
    record Clear(String text) implements Reading {}

    /**
     * It cannot.
     *
     * @param question what to ask beside the field
     */
    record Asked(String question) implements Reading {}
  }

  Reading read(Sample sample, String typed) {
    Optional<NumberText> number = NumberText.parse(typed, DecimalMark.UNTOLD);
    if (number.isEmpty()) {
      return new Reading.Asked(
          typed.contains(",")
              ? "A comma may mark decimals or thousands here: write a point for decimals, and"
                  + " nothing for thousands."
              : "A number with its unit is expected, such as " + example(sample) + ".");
    }
    return withUnit(sample, number.get());
  }

  private Reading withUnit(Sample sample, NumberText number) {
    String written = withoutAsides(number.rest());
    String sign =
        switch (number.kind()) {
          case BELOW -> "<";
          case ABOVE -> ">";
          case VALUE, TITRE -> "";
        };
    String value = sign + number.literal();
    String unit = written.isEmpty() ? unit(sample) : written;
    if (unit.isEmpty()) {
      return sample.analyte().unit() == CanonicalUnit.ARBITRARY
          ? new Reading.Clear(value)
          : new Reading.Asked(
              "Of which unit? Type it once, such as "
                  + example(sample)
                  + "; it is remembered for this laboratory.");
    }
    return spellings
        .ucum(unit, sample.analyte())
        .<Reading>map(ucum -> new Reading.Clear(value + " " + ucum))
        .orElseGet(
            () ->
                new Reading.Asked(
                    "“"
                        + unit
                        + "” is no unit of "
                        + sample.analyte().term()
                        + " that is known here; such as "
                        + example(sample)
                        + "."));
  }

  private String example(Sample sample) {
    String known = unit(sample);
    String unit = known.isEmpty() ? sample.analyte().unit().ucum() : known;
    return ("220 " + unit.replace("/uL", "/µL")).strip();
  }

  /** Without flags and a range of reference, which are the laboratory's and not the result. */
  private static String withoutAsides(String rest) {
    String text = RANGE.matcher(rest.strip()).replaceFirst("");
    text = FIRST.matcher(text).replaceFirst("");
    return LAST.matcher(text).replaceFirst("").strip();
  }
}
