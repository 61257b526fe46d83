package cistern.uncertainty;

import cistern.barrier.Hyperbola;
import cistern.barrier.QuotientLimits;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The chance that a set of verdicts all stay as they are in another measurement. Given the albumin
 * quotient, the other quotients are independent; given the IgG quotient too, so are the antibody
 * indices and the synthesis rate. What shares no sample with these is a factor of its own.
 */
final class KeptVerdicts {

  /** The verdicts that depend on one quotient once the albumin quotient is given. */
  private enum Protein {
    IGG(Analyte.IGG, FindingCode.IGG_QUOTIENT, FindingCode.IGG_FRACTION, FindingCode.IGG_INDEX),
    IGA(Analyte.IGA, FindingCode.IGA_QUOTIENT, FindingCode.IGA_FRACTION, FindingCode.IGA_INDEX),
    IGM(Analyte.IGM, FindingCode.IGM_QUOTIENT, FindingCode.IGM_FRACTION, FindingCode.IGM_INDEX),
    KAPPA(
        Analyte.KAPPA,
        FindingCode.KAPPA_QUOTIENT,
        FindingCode.KAPPA_FRACTION,
        FindingCode.KAPPA_INDEX);

    private final Analyte analyte;
    private final FindingCode quotient;
    private final FindingCode fraction;
    private final FindingCode index;

    Protein(Analyte analyte, FindingCode quotient, FindingCode fraction, FindingCode index) {
      this.analyte = analyte;
      this.quotient = quotient;
      this.fraction = fraction;
      this.index = index;
    }

    private boolean isIn(Set<FindingCode> codes) {
      return codes.contains(quotient) || codes.contains(fraction) || codes.contains(index);
    }
  }

  /** What is measured in CSF alone. */
  static final Map<FindingCode, Analyte> ALONE =
      Map.of(
          FindingCode.LACTATE, Analyte.LACTATE,
          FindingCode.TOTAL_PROTEIN, Analyte.TOTAL_PROTEIN,
          FindingCode.LEUKOCYTES, Analyte.LEUKOCYTES,
          FindingCode.ERYTHROCYTES, Analyte.ERYTHROCYTES,
          FindingCode.MYELIN_BASIC_PROTEIN, Analyte.MYELIN_BASIC_PROTEIN);

  private static final Set<FindingCode> COUNTED = counted();

  private final PanelErrors errors;
  private final Rules rules;
  private final Findings findings;

  /**
   * The verdicts of one measurement, and another.
   *
   * @param errors what the other measurement may give
   * @param rules the limits that move with it
   * @param findings the verdicts to be kept
   */
  KeptVerdicts(PanelErrors errors, Rules rules, Findings findings) {
    this.errors = errors;
    this.rules = rules;
    this.findings = findings;
  }

  private static Set<FindingCode> counted() {
    Set<FindingCode> counted = EnumSet.copyOf(ALONE.keySet());
    counted.add(FindingCode.ALBUMIN_QUOTIENT);
    counted.add(FindingCode.GLUCOSE_RATIO);
    for (Protein protein : Protein.values()) {
      counted.addAll(List.of(protein.quotient, protein.fraction, protein.index));
    }
    counted.add(FindingCode.IGG_SYNTHESIS_RATE);
    counted.addAll(KeptIgg.ANTIBODIES.keySet());
    return counted;
  }

  /** Whether the verdict on a code is one of those that are counted. */
  static boolean isCounted(FindingCode code) {
    return COUNTED.contains(code);
  }

  /** The chance that all the verdicts on some counted codes are kept. */
  double chance(Set<FindingCode> codes) {
    double chance = 1;
    Set<FindingCode> joint = EnumSet.noneOf(FindingCode.class);
    for (FindingCode code : codes) {
      Analyte alone = ALONE.get(code);
      if (alone != null) {
        chance *= Range.keeping(findings.get(code)).chance(errors.csf(alone));
      } else if (code == FindingCode.GLUCOSE_RATIO) {
        chance *= glucose();
      } else {
        joint.add(code);
      }
    }
    return Math.clamp(joint.isEmpty() ? chance : chance * joint(joint), 0, 1);
  }

  private double glucose() {
    double over =
        rules.glucose().chanceOver(errors.csf(Analyte.GLUCOSE), errors.serum(Analyte.GLUCOSE));
    return findings.verdict(FindingCode.GLUCOSE_RATIO) == Verdict.BELOW ? 1 - over : over;
  }

  private double joint(Set<FindingCode> codes) {
    LogNormal albumin = errors.quotient(Analyte.ALBUMIN);
    Range allowed =
        codes.contains(FindingCode.ALBUMIN_QUOTIENT)
            ? Range.keeping(findings.get(FindingCode.ALBUMIN_QUOTIENT))
            : Range.ALL;
    Optional<KeptIgg> igg =
        KeptIgg.isNeeded(codes)
            ? Optional.of(new KeptIgg(errors, rules, findings, codes))
            : Optional.empty();
    Map<Protein, LogNormal> quotients = new EnumMap<>(Protein.class);
    for (Protein protein : Protein.values()) {
      if (protein.isIn(codes) || (protein == Protein.IGG && igg.isPresent())) {
        quotients.put(protein, errors.quotient(protein.analyte));
      }
    }
    if (albumin.sigma() == 0) {
      return allowed.chance(albumin) * given(albumin.median(), codes, quotients, igg);
    }
    return rule(albumin, allowed, quotients, igg)
        .expectation(z -> given(albumin.at(z), codes, quotients, igg));
  }

  /** Split wherever one of the other quotients, or an antibody's, passes a limit. */
  private NormalRule rule(
      LogNormal albumin, Range allowed, Map<Protein, LogNormal> quotients, Optional<KeptIgg> igg) {
    NormalRule.Bends bends = allowed.bendsOf(albumin);
    quotients.forEach(
        (protein, quotient) -> {
          QuotientLimits limits = rules.limits(protein.analyte);
          Range index = Range.keeping(findings.get(protein.index));
          for (double end : new double[] {index.lower(), index.upper()}) {
            Range.bend(bends, albumin, quotient.median() / end, quotient.sigma());
          }
          double limit = new Curve.Limit(limits.upper()).inverse(quotient.median());
          Range.bend(bends, albumin, limit, quotient.sigma());
          limits
              .lower()
              .map(low -> new Curve.Limit(low).inverse(quotient.median()))
              .ifPresent(low -> Range.bend(bends, albumin, low, quotient.sigma()));
        });
    igg.ifPresent(kept -> kept.bend(bends, albumin));
    return NormalRule.split(bends);
  }

  private double given(
      double albumin,
      Set<FindingCode> codes,
      Map<Protein, LogNormal> quotients,
      Optional<KeptIgg> igg) {
    double chance = 1;
    for (Map.Entry<Protein, LogNormal> entry : quotients.entrySet()) {
      Range range = range(entry.getKey(), albumin, codes);
      chance *=
          entry.getKey() == Protein.IGG && igg.isPresent()
              ? igg.get().chance(range, albumin)
              : range.chance(entry.getValue());
    }
    return chance;
  }

  private Range range(Protein protein, double albumin, Set<FindingCode> codes) {
    Range range = Range.ALL;
    Limits limits = limits(rules.limits(protein.analyte), albumin);
    if (codes.contains(protein.quotient)) {
      range = range.and(Range.of(limits, findings.verdict(protein.quotient)));
    }
    if (codes.contains(protein.fraction)) {
      Limits upper = Limits.upper(limits.above().orElseThrow());
      range = range.and(Range.of(upper, findings.verdict(protein.fraction)));
    }
    return codes.contains(protein.index)
        ? range.and(Range.keeping(findings.get(protein.index)).times(albumin))
        : range;
  }

  private static Limits limits(QuotientLimits of, double albumin) {
    Limits upper = Limits.upper(Threshold.over(of.upper().at(albumin)));
    return of.lower().map((Hyperbola l) -> upper.withLower(l.at(albumin))).orElse(upper);
  }
}
