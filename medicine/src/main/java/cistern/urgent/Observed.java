package cistern.urgent;

import cistern.bands.BandReading;
import cistern.bands.BandVerdict;
import cistern.bedside.Bedside;
import cistern.differential.Serology;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Verdict;
import cistern.fluid.Infancy;
import cistern.measurement.Analyte;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.measurement.Interval;
import cistern.measurement.Measurement;
import cistern.measurement.Measurement.Tube;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.panel.UnitSlipSuspected;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What the triggers read. Beside blood, cells and protein are the corrected ones; a doubted value
 * is not read, but for a protein that is high beside its albumin.
 *
 * @param panel the panel with its problems
 * @param findings every derived quantity
 * @param bands what the gel says
 * @param serology tests for single antibodies
 * @param bedside what is known beside the fluid
 * @param setting what the procedure and the evidence say
 * @param facts the thresholds
 */
public record Observed(
    CheckedPanel panel,
    Findings findings,
    BandReading bands,
    List<Serology> serology,
    Bedside bedside,
    ClinicalSetting setting,
    Facts facts) {

  private static final Sample PROTEIN = Sample.csf(Analyte.TOTAL_PROTEIN);
  private static final Trigger BLOODY =
      Trigger.over(Quantity.ERYTHROCYTES, "urgent.blood.erythrocytes.over");
  private static final double SECONDS_AN_HOUR = 3600;
  private static final double HOURS_A_DAY = 24;

  /** Copies the list. */
  public Observed {
    serology = List.copyOf(serology);
  }

  /** What is known of a quantity; nothing where it was not measured or is doubted. */
  Optional<Interval> value(Quantity quantity) {
    return switch (quantity) {
      case LEUKOCYTES -> corrected(Analyte.LEUKOCYTES, FindingCode.LEUKOCYTES_CORRECTED);
      case PROTEIN -> corrected(Analyte.TOTAL_PROTEIN, FindingCode.TOTAL_PROTEIN_CORRECTED);
      case NEUTROPHILS -> cells(csf(Analyte.NEUTROPHILS));
      case BLOOD_NEUTROPHILS ->
          product(
              measured(new Sample(Analyte.LEUKOCYTES, Compartment.BLOOD)),
              measured(new Sample(Analyte.NEUTROPHILS, Compartment.BLOOD)));
      case EOSINOPHILS -> cells(csf(Analyte.EOSINOPHILS));
      case NEUTROPHIL_SHARE -> csf(Analyte.NEUTROPHILS);
      case EOSINOPHIL_SHARE -> csf(Analyte.EOSINOPHILS);
      case LYMPHOCYTE_SHARE -> csf(Analyte.LYMPHOCYTES).or(() -> rest(1, Analyte.NEUTROPHILS));
      case MONONUCLEAR_SHARE -> mononuclear();
      case ERYTHROCYTES -> csf(Analyte.ERYTHROCYTES);
      case LAST_ERYTHROCYTES ->
          measurement(Sample.csf(Analyte.ERYTHROCYTES))
              .filter(m -> m.tube() != Tube.FIRST)
              .map(m -> m.value());
      case GLUCOSE -> csf(Analyte.GLUCOSE);
      case SERUM_GLUCOSE -> measured(Sample.serum(Analyte.GLUCOSE));
      case LACTATE -> csf(Analyte.LACTATE);
      case GLUCOSE_RATIO -> quotient(FindingCode.GLUCOSE_RATIO, Analyte.GLUCOSE);
      case ALBUMIN_QUOTIENT -> quotient(FindingCode.ALBUMIN_QUOTIENT, Analyte.ALBUMIN);
      case KAPPA_INDEX -> decided(FindingCode.KAPPA_INDEX);
      case MEASLES -> decided(FindingCode.MEASLES_ANTIBODY_INDEX);
      case PRESSURE -> exactly(setting.pressure());
      case BODY_MASS_INDEX -> exactly(setting.body().bmi());
      case COMA_SCORE ->
          setting.comaScore().isPresent()
              ? Optional.of(Interval.of(setting.comaScore().getAsInt()))
              : Optional.empty();
      case AGE_YEARS -> exactly(person().ageYears());
      case AGE_DAYS -> exactly(person().days());
      case ONSET_HOURS -> exactly(hoursSinceOnset());
      case ONSET_DAYS -> hours(1 / HOURS_A_DAY);
    };
  }

  private Person person() {
    return panel.panel().person();
  }

  private static Optional<Interval> exactly(OptionalDouble value) {
    return value.isPresent() ? Optional.of(Interval.of(value.getAsDouble())) : Optional.empty();
  }

  private Optional<Interval> hours(double factor) {
    OptionalDouble hours = hoursSinceOnset();
    return hours.isPresent()
        ? Optional.of(Interval.of(Math.max(0, hours.getAsDouble()) * factor))
        : Optional.empty();
  }

  private OptionalDouble hoursSinceOnset() {
    Optional<OffsetDateTime> onset = bedside.attack().onsetAt();
    Optional<OffsetDateTime> drawn = panel.panel().csf().at();
    return onset.isPresent() && drawn.isPresent()
        ? OptionalDouble.of(
            Duration.between(onset.get(), drawn.get()).toSeconds() / SECONDS_AN_HOUR)
        : OptionalDouble.empty();
  }

  private Optional<Measurement> measurement(Sample sample) {
    return panel.panel().find(sample).filter(m -> !isDoubted(m));
  }

  private boolean isDoubted(Measurement measurement) {
    return panel.suspected().contains(measurement.sample()) && !isHighBesideAlbumin(measurement);
  }

  /** A protein that is doubted only for a small albumin alarms: the slip may be the albumin's. */
  private boolean isHighBesideAlbumin(Measurement measurement) {
    return measurement.sample().equals(PROTEIN)
        && panel.problems().stream()
            .filter(UnitSlipSuspected.class::isInstance)
            .map(UnitSlipSuspected.class::cast)
            .anyMatch(s -> s.analyte() == Analyte.ALBUMIN && s.suspected().contains(PROTEIN))
        && panel
            .panel()
            .find(Sample.csf(Analyte.ALBUMIN))
            .filter(a -> a.value().upper() < measurement.value().lower())
            .isPresent();
  }

  private Optional<Interval> measured(Sample sample) {
    return measurement(sample).map(m -> m.value());
  }

  private Optional<Interval> csf(Analyte analyte) {
    return measured(Sample.csf(analyte));
  }

  /** Whether so much blood is in the fluid that cells and protein are corrected. */
  boolean isBloody() {
    return BLOODY.answer(this).isYes();
  }

  private Optional<Interval> corrected(Analyte analyte, FindingCode code) {
    Optional<Interval> raw = csf(analyte);
    if (raw.isEmpty() || !isBloody()) {
      return raw;
    }
    Optional<Interval> kept = findings.get(code).value();
    return kept.isPresent() ? kept : Optional.of(Interval.of(0));
  }

  private Optional<Interval> cells(Optional<Interval> share) {
    return product(value(Quantity.LEUKOCYTES), share);
  }

  private static Optional<Interval> product(Optional<Interval> all, Optional<Interval> share) {
    return all.isPresent() && share.isPresent()
        ? Optional.of(product(all.get(), share.get()))
        : Optional.empty();
  }

  private static Interval product(Interval a, Interval b) {
    double upper = a.upper() == 0 || b.upper() == 0 ? 0 : a.upper() * b.upper();
    return new Interval(a.lower() * b.lower(), upper, a.censored() || b.censored());
  }

  /** What some kinds of cell leave for the others, at most. */
  private Optional<Interval> rest(double whole, Analyte... kinds) {
    double known = 0;
    for (Analyte kind : kinds) {
      known += csf(kind).map(Interval::lower).orElse(0.0);
    }
    double left = Math.max(0, whole - known);
    return known > 0 ? Optional.of(between(0, left)) : Optional.empty();
  }

  private static Interval between(double lower, double upper) {
    return lower == upper ? Interval.of(lower) : new Interval(lower, upper, true);
  }

  private Optional<Interval> mononuclear() {
    Optional<Interval> lymphocytes = csf(Analyte.LYMPHOCYTES);
    Optional<Interval> monocytes = csf(Analyte.MONOCYTES);
    if (lymphocytes.isPresent() && monocytes.isPresent()) {
      Interval a = lymphocytes.get();
      Interval b = monocytes.get();
      boolean isOpen = a.censored() || b.censored();
      return Optional.of(new Interval(a.lower() + b.lower(), a.upper() + b.upper(), isOpen));
    }
    if (lymphocytes.isPresent()) {
      double most = 1 - csf(Analyte.NEUTROPHILS).map(Interval::lower).orElse(0.0);
      double least = lymphocytes.get().lower();
      return Optional.of(between(least, Math.max(least, most)));
    }
    return rest(1, Analyte.NEUTROPHILS, Analyte.EOSINOPHILS);
  }

  private Optional<Interval> quotient(FindingCode code, Analyte analyte) {
    boolean isUsable =
        !panel.pairing().isInvalid()
            && Stream.of(Sample.csf(analyte), Sample.serum(analyte))
                .noneMatch(panel.suspected()::contains);
    return isUsable ? findings.get(code).value() : Optional.empty();
  }

  private Optional<Interval> decided(FindingCode code) {
    Finding finding = findings.get(code);
    return finding.verdict().isDecided() ? finding.value() : Optional.empty();
  }

  /** Whether the limits of the first 90 days hold. */
  boolean isInfant() {
    return infancy().isPresent();
  }

  /** The part of the first 90 days whose limits hold. */
  Optional<Infancy> infancy() {
    return Infancy.of(person(), facts);
  }

  /** Whether IgM exceeds both other classes among what is made inside the CNS. */
  Answer isIgmDominant() {
    Optional<Interval> igm = decided(FindingCode.IGM_FRACTION);
    Optional<Interval> igg = decided(FindingCode.IGG_FRACTION);
    Optional<Interval> iga = decided(FindingCode.IGA_FRACTION);
    if (igm.isEmpty()) {
      return Answer.UNKNOWN;
    }
    if (!isAbove(FindingCode.IGM_FRACTION)) {
      return Answer.NO;
    }
    double least = igm.get().lower();
    boolean isOver =
        Stream.of(igg, iga).flatMap(Optional::stream).allMatch(other -> least > other.upper());
    return isOver ? igg.map(known -> Answer.YES).orElse(Answer.UNKNOWN) : Answer.NO;
  }

  Verdict verdict(FindingCode code) {
    return findings.verdict(code);
  }

  boolean isAbove(FindingCode code) {
    return findings.get(code).isAbove();
  }

  /** What the bands say, where they can be used at all. */
  BandVerdict usableBands() {
    boolean isUsable =
        bands.isConfirmed()
            && !panel.pairing().isInvalid()
            && !Stops.isWithoutSerum(this)
            && !Stops.isNotLumbar(this)
            && !Stops.isMonoclonal(this);
    return isUsable ? bands.verdict() : BandVerdict.UNDETERMINED;
  }

  Panel results() {
    return panel.panel();
  }
}
