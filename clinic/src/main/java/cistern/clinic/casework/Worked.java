package cistern.clinic.casework;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.interpretation.Interpretation;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Sample;
import cistern.report.wording.ValueWords;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.stream.Collectors;

/** A formula with the numbers of one case in it, each with its unit; nothing is computed here. */
final class Worked {

  private static final MathContext FOUR = new MathContext(4);

  private final Finding finding;
  private final Interpretation interpretation;

  private Worked(Finding finding, Interpretation interpretation) {
    this.finding = finding;
    this.interpretation = interpretation;
  }

  /** The formula of a finding with its numbers. */
  static String of(Finding finding, Interpretation interpretation) {
    Worked worked = new Worked(finding, interpretation);
    String formula = worked.formula();
    return finding.hasValue() ? formula + worked.result() : formula;
  }

  private String result() {
    String unit = ValueWords.unit(finding);
    return " = " + (ValueWords.value(finding) + " " + unit).strip();
  }

  private String formula() {
    return switch (finding.code().kind()) {
      case QUOTIENT, RATIO -> quotient(analyte());
      case INDEX -> "(" + quotient(analyte()) + ") ÷ (" + quotient(Analyte.ALBUMIN) + ")";
      case FRACTION -> "1 − " + limit() + " ÷ (" + quotient(analyte()) + ")";
      case LOCAL -> "((" + quotient(analyte()) + ") − " + limit() + ") × " + serum(analyte());
      case RATE, ANTIBODY_INDEX, REACTION, CSF, SERUM, CORRECTED -> inputs();
    };
  }

  private Analyte analyte() {
    return finding.code().analyte();
  }

  private String quotient(Analyte analyte) {
    return amount(new Sample(analyte, Compartment.CSF)) + " ÷ " + serum(analyte);
  }

  private String serum(Analyte analyte) {
    return amount(new Sample(analyte, Compartment.SERUM));
  }

  /** The limit of the quotient behind a fraction or an amount. */
  private String limit() {
    FindingCode quotient = FindingCode.of(FindingCode.Kind.QUOTIENT, analyte());
    Finding behind = interpretation.findings().get(quotient);
    return behind.limits().isKnown()
        ? "limit (" + ValueWords.limit(behind) + " " + ValueWords.unit(quotient) + ")"
        : "limit";
  }

  private String inputs() {
    String all =
        finding.inputs().stream()
            .map(sample -> sample.term() + " " + amount(sample))
            .collect(Collectors.joining("; "));
    return all.isEmpty() ? "nothing was given" : all;
  }

  private String amount(Sample sample) {
    Optional<Measurement> measured = interpretation.panel().panel().find(sample);
    return measured
        .map(
            m ->
                interpretation
                    .puncture()
                    .units()
                    .find(sample)
                    .map(unit -> ValueWords.reported(m.value(), unit) + " " + unit.text())
                    .orElseGet(() -> number(m.value()) + " " + sample.analyte().unit().ucum()))
        .orElse(sample.term() + " not given");
  }

  private static String number(Interval interval) {
    if (!interval.censored()) {
      return plain(interval.lower());
    }
    return interval.lower() == 0
        ? "below " + plain(interval.upper())
        : "above " + plain(interval.lower());
  }

  private static String plain(double value) {
    return new BigDecimal(value).round(FOUR).stripTrailingZeros().toPlainString();
  }
}
