package cistern.exchange.lab;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * One finding as it is sent.
 *
 * @param code of the finding
 * @param loinc the LOINC code that may be written for it
 * @param sign of a limit, when only a bound is known
 * @param value not rounded; empty when there is none
 * @param unit UCUM
 * @param lower the limit below which it is low
 * @param upper the limit above which it is high
 * @param flag {@code H}, {@code L}, {@code N} or nothing
 * @param inputs the samples it was made from
 * @param note verdict, status, sources and what to keep in mind
 */
public record SentFinding(
    String code,
    Optional<LoincCode> loinc,
    String sign,
    String value,
    String unit,
    Optional<String> lower,
    Optional<String> upper,
    String flag,
    List<String> inputs,
    String note) {

  /** Copies the inputs. */
  public SentFinding {
    inputs = List.copyOf(inputs);
  }

  /** A finding under some facts. */
  public static SentFinding of(Finding finding, Facts facts) {
    String own = finding.code().code();
    String code = Analyte.parse(own).isPresent() ? "finding." + own : own;
    String unit = finding.code().unit().ucum();
    Bound bound = bound(finding.value());
    return new SentFinding(
        code,
        Loinc.toWrite(code, unit, facts),
        bound.sign,
        bound.text,
        unit,
        finding.limits().within().map(SentFinding::at),
        finding.limits().above().map(SentFinding::at),
        flag(finding.verdict()),
        finding.inputs().stream().map(Sample::code).toList(),
        note(finding));
  }

  private record Bound(String sign, String text) {}

  private static Bound bound(Optional<Interval> value) {
    if (value.isEmpty()) {
      return new Bound("", "");
    }
    Interval interval = value.get();
    if (interval.isExact()) {
      return new Bound("", plain(interval.exactly()));
    }
    if (Double.isInfinite(interval.upper())) {
      return new Bound(">", plain(interval.lower()));
    }
    return interval.lower() <= 0 ? new Bound("<", plain(interval.upper())) : new Bound("", "");
  }

  private static String plain(double value) {
    return new BigDecimal(Double.toString(value)).toPlainString();
  }

  private static String at(Threshold cut) {
    return plain(cut.at());
  }

  private static String flag(Verdict verdict) {
    return switch (verdict) {
      case ABOVE -> "H";
      case BELOW -> "L";
      case WITHIN -> "N";
      case BORDERLINE, UNDETERMINED -> "";
    };
  }

  private static String note(Finding finding) {
    String sources = String.join("; ", finding.grounds().sources());
    String more = finding.note().isEmpty() ? "" : " " + finding.note() + ".";
    return "Verdict: %s. Status: %s.%s%s"
        .formatted(
            finding.verdict().word(),
            finding.grounds().status().word(),
            sources.isEmpty() ? "" : " Sources: " + sources + ".",
            more);
  }
}
