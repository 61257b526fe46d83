package cistern.exchange.lab;

import cistern.exchange.ucum.Conversions;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * One result as it is sent.
 *
 * @param code this program's own code, {@code albumin.csf}, with the tube where one is named
 * @param name in words
 * @param loinc the LOINC code that may be written for it
 * @param sign {@code <}, {@code >} or nothing
 * @param value every digit as it was given, or a word
 * @param unit as in the work-up; empty for none
 * @param beside what is said beside it
 */
public record SentResult(
    String code,
    String name,
    Optional<LoincCode> loinc,
    String sign,
    String value,
    String unit,
    Beside beside) {

  /**
   * What is said beside a result.
   *
   * @param status {@code final}, {@code preliminary} or {@code amended}
   * @param range the laboratory's reference range, as written
   * @param method as written
   * @param measuredAt when it was measured
   */
  public record Beside(
      String status,
      Optional<String> range,
      Optional<String> method,
      Optional<OffsetDateTime> measuredAt) {}

  /** The ending of the code of cells in the first tube, beside those of the last. */
  private static final String FIRST = ".first";

  static SentResult of(SentWorkup result) {
    String analyte = result.text("analyte").orElse("");
    String in = result.text("in").orElse("");
    String unit = result.text("unit").orElse("");
    String sample = analyte + "." + in;
    Optional<String> tube = result.text("tube").filter(List.of("first", "last")::contains);
    String code = sample + tube.map(t -> "." + t).orElse("");
    String term = Analyte.parse(analyte).map(Analyte::term).orElse(analyte);
    Optional<String> below = result.text("below");
    Optional<String> above = result.text("above");
    String status = result.text("status").orElse("final");
    return new SentResult(
        code,
        term + " in " + in + tube.map(t -> ", " + t + " tube").orElse(""),
        Loinc.toWrite(sample, unit, result.facts()).filter(l -> !code.endsWith(FIRST)),
        below.isPresent() ? "<" : above.isPresent() ? ">" : "",
        below.or(() -> above).or(() -> result.text("value")).orElse(""),
        unit,
        new Beside(
            status.equals("preliminary") || status.equals("amended") ? status : "final",
            result.text("reportedLimit"),
            result.text("assay"),
            result.time("at")));
  }

  /** The sample as findings name it; empty for the first of two tubes, which nothing rests on. */
  public Optional<String> sample() {
    return Optional.of(Coding.own(code).withoutTube()).filter(s -> !code.endsWith(FIRST));
  }

  /** Whether the unit is one of UCUM; that of an analyte that is not known here may be anything. */
  public boolean isUcum(Facts facts) {
    return Conversions.of(facts).isUnit(unit);
  }

  /** Whether the value is a number that can be written out. */
  public boolean isNumber() {
    return value.matches("-?\\d+(\\.\\d+)?([eE][-+]?\\d{1,3})?");
  }
}
