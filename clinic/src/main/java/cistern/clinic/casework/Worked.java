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
import java.util.List;
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
    String unit = ValueWords.unit(finding.code());
    return " = " + (ValueWords.value(finding) + " " + unit).strip();
  }

  private String formula() {
    return switch (finding.code()) {
      case ALBUMIN_QUOTIENT,
          IGG_QUOTIENT,
          IGA_QUOTIENT,
          IGM_QUOTIENT,
          KAPPA_QUOTIENT,
          LAMBDA_QUOTIENT,
          GLUCOSE_RATIO ->
          quotient(analyte());
      case IGG_INDEX, IGA_INDEX, IGM_INDEX, LAMBDA_INDEX, KAPPA_INDEX ->
          "(" + quotient(analyte()) + ") ÷ (" + quotient(Analyte.ALBUMIN) + ")";
      case IGG_FRACTION, IGA_FRACTION, IGM_FRACTION, KAPPA_FRACTION ->
          "1 − " + limit() + " ÷ (" + quotient(analyte()) + ")";
      case IGG_LOCAL, IGA_LOCAL, IGM_LOCAL, KAPPA_LOCAL ->
          "((" + quotient(analyte()) + ") − " + limit() + ") × " + serum(analyte());
      case IGG_SYNTHESIS_RATE,
          MEASLES_ANTIBODY_INDEX,
          RUBELLA_ANTIBODY_INDEX,
          VARICELLA_ZOSTER_ANTIBODY_INDEX,
          BORRELIA_ANTIBODY_INDEX,
          MRZ_REACTION,
          LACTATE,
          TOTAL_PROTEIN,
          LEUKOCYTES,
          ERYTHROCYTES,
          MYELIN_BASIC_PROTEIN,
          LEUKOCYTES_CORRECTED,
          TOTAL_PROTEIN_CORRECTED,
          IGG_CORRECTED,
          IGA_CORRECTED,
          IGM_CORRECTED,
          ALBUMIN_CORRECTED ->
          inputs();
    };
  }

  /** What the finding is about: the input that is not albumin, unless all are. */
  private Analyte analyte() {
    List<Analyte> analytes = finding.inputs().stream().map(Sample::analyte).toList();
    return analytes.stream().filter(a -> a != Analyte.ALBUMIN).findFirst().orElse(Analyte.ALBUMIN);
  }

  private String quotient(Analyte analyte) {
    return amount(new Sample(analyte, Compartment.CSF)) + " ÷ " + serum(analyte);
  }

  private String serum(Analyte analyte) {
    return amount(new Sample(analyte, Compartment.SERUM));
  }

  /** The limit of the quotient behind a fraction or an amount. */
  private String limit() {
    FindingCode quotient =
        switch (analyte()) {
          case IGG -> FindingCode.IGG_QUOTIENT;
          case IGA -> FindingCode.IGA_QUOTIENT;
          case IGM -> FindingCode.IGM_QUOTIENT;
          case KAPPA -> FindingCode.KAPPA_QUOTIENT;
          case ALBUMIN,
              LAMBDA,
              TOTAL_PROTEIN,
              GLUCOSE,
              LACTATE,
              LEUKOCYTES,
              ERYTHROCYTES,
              HEMATOCRIT,
              NEUTROPHILS,
              LYMPHOCYTES,
              MONOCYTES,
              EOSINOPHILS,
              PLASMA_CELLS,
              MYELIN_BASIC_PROTEIN,
              MEASLES_IGG,
              RUBELLA_IGG,
              VARICELLA_ZOSTER_IGG,
              BORRELIA_IGG ->
              FindingCode.ALBUMIN_QUOTIENT;
        };
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
        .map(m -> number(m.value()) + " " + sample.analyte().unit().ucum())
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
