package cistern.urgent;

import cistern.barrier.BloodLimit;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/** Verdicts that the person's treatment, the site or blood take away; every value stays. */
public final class Withheld {

  private static final Set<FindingCode> BY_INFUSION =
      EnumSet.of(
          FindingCode.IGG_INDEX,
          FindingCode.IGA_INDEX,
          FindingCode.IGM_INDEX,
          FindingCode.MEASLES_ANTIBODY_INDEX,
          FindingCode.RUBELLA_ANTIBODY_INDEX,
          FindingCode.VARICELLA_ZOSTER_ANTIBODY_INDEX,
          FindingCode.BORRELIA_ANTIBODY_INDEX,
          FindingCode.MRZ_REACTION);
  private static final Set<FindingCode> BY_EXCHANGE =
      EnumSet.of(
          FindingCode.IGG_INDEX,
          FindingCode.IGA_INDEX,
          FindingCode.IGM_INDEX,
          FindingCode.IGG_FRACTION,
          FindingCode.IGG_LOCAL,
          FindingCode.IGG_SYNTHESIS_RATE);
  private static final Set<FindingCode> BY_BLOOD =
      EnumSet.of(
          FindingCode.IGG_INDEX,
          FindingCode.IGA_INDEX,
          FindingCode.IGM_INDEX,
          FindingCode.IGG_SYNTHESIS_RATE);
  private static final Set<FindingCode> BY_SITE =
      EnumSet.of(
          FindingCode.ALBUMIN_QUOTIENT,
          FindingCode.IGG_QUOTIENT,
          FindingCode.IGA_QUOTIENT,
          FindingCode.IGM_QUOTIENT,
          FindingCode.KAPPA_QUOTIENT,
          FindingCode.IGG_FRACTION,
          FindingCode.IGA_FRACTION,
          FindingCode.IGM_FRACTION,
          FindingCode.KAPPA_FRACTION,
          FindingCode.IGG_LOCAL,
          FindingCode.IGA_LOCAL,
          FindingCode.IGM_LOCAL,
          FindingCode.KAPPA_LOCAL,
          FindingCode.KAPPA_INDEX);

  private final Observed observed;
  private final Map<FindingCode, String> reasons = new EnumMap<>(FindingCode.class);

  private Withheld(Observed observed) {
    this.observed = observed;
  }

  /** The findings without the verdicts that cannot stand. */
  public static Findings of(Observed observed) {
    return new Withheld(observed).findings();
  }

  private Findings findings() {
    if (Infusion.of(observed).isYes()) {
      withhold(BY_INFUSION, "undetermined because of an immunoglobulin infusion");
    }
    if (Infusion.exchange(observed).isYes()) {
      withhold(BY_EXCHANGE, "undetermined because plasma exchange lowers serum IgG");
    }
    if (Stops.isNotLumbar(observed)) {
      withhold(BY_SITE, "undetermined because the limits hold for lumbar fluid only");
    }
    if (BloodLimit.of(observed.facts()).doubt(observed.panel()).isPresent()) {
      withhold(BY_BLOOD, "undetermined because blood in the CSF can feign synthesis");
      if (isBarrierChanged()) {
        withhold(
            EnumSet.of(FindingCode.ALBUMIN_QUOTIENT),
            "undetermined because the value corrected for blood has another verdict");
      }
    }
    return Findings.of(observed.findings().all().stream().map(this::withheld).toList());
  }

  private void withhold(Set<FindingCode> codes, String reason) {
    codes.forEach(code -> reasons.putIfAbsent(code, reason));
  }

  private Finding withheld(Finding finding) {
    String reason = reasons.get(finding.code());
    boolean isJudged = finding.hasValue() && finding.verdict().isDecided();
    return reason != null && isJudged ? finding.withDoubt(reason) : finding;
  }

  /** Whether the albumin quotient without the blood has another verdict. */
  private boolean isBarrierChanged() {
    Finding quotient = observed.findings().get(FindingCode.ALBUMIN_QUOTIENT);
    Finding corrected = observed.findings().get(FindingCode.ALBUMIN_CORRECTED);
    Sample serum = Sample.serum(Analyte.ALBUMIN);
    if (!quotient.verdict().isDecided()
        || !corrected.hasValue()
        || !observed.results().has(serum)) {
      return false;
    }
    Interval albumin = corrected.value().orElseThrow();
    Interval divisor = observed.results().find(serum).orElseThrow().value();
    Verdict verdict = quotient.limits().judge(albumin.dividedBy(divisor));
    return verdict != quotient.verdict();
  }
}
