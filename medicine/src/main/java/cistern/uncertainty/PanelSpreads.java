package cistern.uncertainty;

import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.FindingCode.Kind;
import cistern.finding.Threshold;
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
    Analyte analyte = code.analyte();
    return switch (code.kind()) {
      case QUOTIENT, RATIO -> Optional.of(errors.quotient(analyte));
      case FRACTION -> Optional.of(fraction(analyte));
      case LOCAL -> Optional.of(local(analyte));
      case INDEX -> Optional.of(index(analyte));
      case RATE -> Optional.of(rate());
      case ANTIBODY_INDEX -> Optional.of(antibody(analyte));
      case REACTION -> Optional.empty();
      case CSF, SERUM -> Optional.of(errors.get(code.samples().getFirst()));
      case CORRECTED ->
          Optional.of(
              code == FindingCode.LEUKOCYTES_CORRECTED
                  ? leukocytesCorrected()
                  : code == FindingCode.TOTAL_PROTEIN_CORRECTED
                      ? proteinCorrected()
                      : corrected(analyte));
    };
  }

  /** The chance that a value has the verdict of a finding. */
  double chanceToKeep(Finding finding) {
    if (errors.isErrorFree(finding.inputs())) {
      return 1;
    }
    double above = chanceOver(finding, finding.limits().above(), 0);
    double borderline = chanceOver(finding, finding.limits().borderline(), above);
    double within = chanceFromLower(finding);
    double chance =
        switch (finding.verdict()) {
          case ABOVE -> above;
          case BORDERLINE -> borderline - above;
          case WITHIN -> within - borderline;
          case BELOW -> 1 - within;
          case UNDETERMINED -> 1;
        };
    return Math.clamp(chance, 0, 1);
  }

  private double chanceOver(Finding finding, Optional<Threshold> cut, double otherwise) {
    return cut.map(c -> chanceOver(finding.code(), c)).orElse(otherwise);
  }

  /** The chance over a limit, which may itself move with the value. */
  double chanceOver(FindingCode code, Threshold cut) {
    Analyte analyte = code.analyte();
    return switch (code.kind()) {
      case FRACTION, LOCAL -> fraction(analyte).chanceOverLimit();
      case QUOTIENT ->
          isOfHyperbola(code) ? fraction(analyte).chanceOverLimit() : chanceOverFixed(code, cut);
      case RATIO -> rules.glucose().chanceOver(errors.csf(analyte), errors.serum(analyte));
      case INDEX, RATE, ANTIBODY_INDEX, REACTION, CSF, SERUM, CORRECTED ->
          chanceOverFixed(code, cut);
    };
  }

  private double chanceOverFixed(FindingCode code, Threshold cut) {
    return find(code).orElseThrow().chanceOver(cut.at());
  }

  /** The chance over the lower limit; certain where there is none. */
  private double chanceFromLower(Finding finding) {
    FindingCode code = finding.code();
    if (code.kind() == Kind.FRACTION) {
      return 1;
    }
    return isOfHyperbola(code)
        ? rules
            .limits(code.analyte())
            .lower()
            .map(low -> of(code.analyte(), new Curve.Limit(low)).chanceOverLimit())
            .orElse(1.0)
        : chanceOver(finding, finding.limits().within(), 1);
  }

  private static boolean isOfHyperbola(FindingCode code) {
    return code.kind() == Kind.FRACTION
        || (code.kind() == Kind.QUOTIENT
            && FindingCode.find(Kind.FRACTION, code.analyte()).isPresent());
  }

  /** The intrathecal fraction of an immunoglobulin or of κ. */
  IntrathecalFraction fraction(Analyte analyte) {
    return fractions.computeIfAbsent(analyte, a -> of(a, rules.curve(a)));
  }

  private IntrathecalFraction of(Analyte analyte, Curve.Limit limit) {
    return IntrathecalFraction.of(errors.quotient(analyte), albumin(), limit);
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
