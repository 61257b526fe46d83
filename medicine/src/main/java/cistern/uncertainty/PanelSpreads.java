package cistern.uncertainty;

import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The distribution of every quantity that can be derived from the values of one panel. */
final class PanelSpreads {

  private static final Sample CSF_CELLS = Sample.csf(Analyte.ERYTHROCYTES);
  private static final Sample BLOOD_CELLS = Sample.blood(Analyte.ERYTHROCYTES);
  private static final Sample HAEMATOCRIT = Sample.blood(Analyte.HEMATOCRIT);
  private static final Sample BLOOD_LEUKOCYTES = Sample.blood(Analyte.LEUKOCYTES);

  private final PanelErrors errors;
  private final Rules rules;
  private final Map<Analyte, IntrathecalFraction> fractions = new EnumMap<>(Analyte.class);
  private Optional<Grid> albumin = Optional.empty();
  private Optional<ExpectedQuotient> expected = Optional.empty();
  private Optional<ExpectedQuotient.Points> points = Optional.empty();

  PanelSpreads(PanelErrors errors, Rules rules) {
    this.errors = errors;
    this.rules = rules;
  }

  PanelErrors errors() {
    return errors;
  }

  /** The distribution of a quantity that has one; all its inputs are numbers. */
  Optional<Spread> find(FindingCode code) {
    return switch (code) {
      case ALBUMIN_QUOTIENT -> Optional.of(errors.quotient(Analyte.ALBUMIN));
      case IGG_QUOTIENT -> Optional.of(errors.quotient(Analyte.IGG));
      case IGA_QUOTIENT -> Optional.of(errors.quotient(Analyte.IGA));
      case IGM_QUOTIENT -> Optional.of(errors.quotient(Analyte.IGM));
      case KAPPA_QUOTIENT -> Optional.of(errors.quotient(Analyte.KAPPA));
      case LAMBDA_QUOTIENT -> Optional.of(errors.quotient(Analyte.LAMBDA));
      case IGG_FRACTION -> Optional.of(fraction(Analyte.IGG));
      case IGA_FRACTION -> Optional.of(fraction(Analyte.IGA));
      case IGM_FRACTION -> Optional.of(fraction(Analyte.IGM));
      case KAPPA_FRACTION -> Optional.of(fraction(Analyte.KAPPA));
      case IGG_LOCAL -> Optional.of(local(Analyte.IGG));
      case IGA_LOCAL -> Optional.of(local(Analyte.IGA));
      case IGM_LOCAL -> Optional.of(local(Analyte.IGM));
      case KAPPA_LOCAL -> Optional.of(local(Analyte.KAPPA));
      case IGG_INDEX -> Optional.of(index(Analyte.IGG));
      case IGA_INDEX -> Optional.of(index(Analyte.IGA));
      case IGM_INDEX -> Optional.of(index(Analyte.IGM));
      case LAMBDA_INDEX -> Optional.of(index(Analyte.LAMBDA));
      case KAPPA_INDEX -> Optional.of(index(Analyte.KAPPA));
      case IGG_SYNTHESIS_RATE -> Optional.of(rate());
      case MEASLES_ANTIBODY_INDEX -> Optional.of(antibody(Analyte.MEASLES_IGG));
      case RUBELLA_ANTIBODY_INDEX -> Optional.of(antibody(Analyte.RUBELLA_IGG));
      case VARICELLA_ZOSTER_ANTIBODY_INDEX -> Optional.of(antibody(Analyte.VARICELLA_ZOSTER_IGG));
      case BORRELIA_ANTIBODY_INDEX -> Optional.of(antibody(Analyte.BORRELIA_IGG));
      case MRZ_REACTION -> Optional.empty();
      case GLUCOSE_RATIO -> Optional.of(errors.quotient(Analyte.GLUCOSE));
      case LACTATE, TOTAL_PROTEIN, LEUKOCYTES, ERYTHROCYTES, MYELIN_BASIC_PROTEIN ->
          Optional.ofNullable(KeptVerdicts.ALONE.get(code)).map(errors::csf);
      case LEUKOCYTES_CORRECTED -> Optional.of(leukocytesCorrected());
      case TOTAL_PROTEIN_CORRECTED -> Optional.of(proteinCorrected());
      case IGG_CORRECTED -> Optional.of(corrected(Analyte.IGG));
      case IGA_CORRECTED -> Optional.of(corrected(Analyte.IGA));
      case IGM_CORRECTED -> Optional.of(corrected(Analyte.IGM));
      case ALBUMIN_CORRECTED -> Optional.of(corrected(Analyte.ALBUMIN));
    };
  }

  /** The intrathecal fraction of an immunoglobulin or of κ. */
  IntrathecalFraction fraction(Analyte analyte) {
    return fractions.computeIfAbsent(
        analyte, a -> IntrathecalFraction.of(errors.quotient(a), albumin(), rules.curve(a)));
  }

  private Grid albumin() {
    Grid found = albumin.orElseGet(() -> Grid.line(errors.quotient(Analyte.ALBUMIN)));
    albumin = Optional.of(found);
    return found;
  }

  private Excess local(Analyte analyte) {
    return new Excess(
        errors.csf(analyte),
        errors.serum(analyte),
        errors.quotient(Analyte.ALBUMIN),
        rules.curve(analyte),
        true);
  }

  private LogNormal index(Analyte analyte) {
    return errors.quotient(analyte).over(errors.quotient(Analyte.ALBUMIN));
  }

  /** The rate is the daily CSF times an excess; the excess is left in mg/L times L/d. */
  private Excess rate() {
    double perDay = rules.csfPerDay();
    return new Excess(
        errors.csf(Analyte.IGG).times(perDay),
        errors.serum(Analyte.IGG).times(perDay),
        errors.quotient(Analyte.ALBUMIN),
        rules.leaked(),
        false);
  }

  /** The quotient that total IgG explains. */
  ExpectedQuotient expected() {
    ExpectedQuotient found =
        expected.orElseGet(
            () ->
                new ExpectedQuotient(
                    errors.quotient(Analyte.IGG), albumin(), rules.curve(Analyte.IGG)));
    expected = Optional.of(found);
    return found;
  }

  /** Its fixed points. */
  ExpectedQuotient.Points points() {
    ExpectedQuotient.Points found = points.orElseGet(() -> expected().points());
    points = Optional.of(found);
    return found;
  }

  private AntibodyIndex antibody(Analyte analyte) {
    return new AntibodyIndex(errors.quotient(analyte), expected(), points());
  }

  private Excess leukocytesCorrected() {
    LogNormal csf = errors.csf(Analyte.LEUKOCYTES);
    LogNormal cells = errors.get(CSF_CELLS);
    boolean isCounted =
        errors.isExact(List.of(BLOOD_CELLS, BLOOD_LEUKOCYTES))
            && errors.get(BLOOD_CELLS).median() > 0;
    LogNormal brought =
        isCounted
            ? cells.over(errors.get(BLOOD_CELLS)).times(errors.get(BLOOD_LEUKOCYTES))
            : cells.times(rules.leukocytesPerCell());
    return new Excess(csf, brought, LogNormal.ONE, Curve.Line.WHOLE, true);
  }

  private Excess proteinCorrected() {
    Sample serum = Sample.serum(Analyte.TOTAL_PROTEIN);
    boolean isCounted =
        errors.isExact(List.of(serum, BLOOD_CELLS, HAEMATOCRIT))
            && errors.get(BLOOD_CELLS).median() > 0;
    return isCounted
        ? corrected(Analyte.TOTAL_PROTEIN)
        : new Excess(
            errors.csf(Analyte.TOTAL_PROTEIN),
            errors.get(CSF_CELLS).times(rules.proteinPerCell()),
            LogNormal.ONE,
            Curve.Line.WHOLE,
            true);
  }

  private Excess corrected(Analyte analyte) {
    LogNormal blood = errors.get(CSF_CELLS).over(errors.get(BLOOD_CELLS));
    return new Excess(
        errors.csf(analyte),
        blood.times(errors.serum(analyte)),
        errors.get(HAEMATOCRIT),
        new Curve.Plasma(),
        true);
  }
}
