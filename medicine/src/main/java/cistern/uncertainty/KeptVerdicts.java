package cistern.uncertainty;

import cistern.barrier.Hyperbola;
import cistern.barrier.QuotientLimits;
import cistern.finding.FindingCode;
import cistern.finding.FindingCode.Kind;
import cistern.finding.Findings;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The chance that a set of verdicts all stay as they are in another measurement. Given the albumin
 * quotient, the other quotients are independent; given the IgG quotient too, so are the antibody
 * indices and the synthesis rate. What shares no sample with these is a factor of its own.
 */
final class KeptVerdicts {

  /** What depends on one quotient once the albumin quotient is given. */
  private static final List<Analyte> PROTEINS =
      List.of(Analyte.IGG, Analyte.IGA, Analyte.IGM, Analyte.KAPPA);

  private static final Set<Kind> OF_A_PROTEIN =
      EnumSet.of(Kind.QUOTIENT, Kind.FRACTION, Kind.INDEX);

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
    return Arrays.stream(FindingCode.values())
        .filter(
            code ->
                isOfAProtein(code)
                    || code == FindingCode.ALBUMIN_QUOTIENT
                    || EnumSet.of(Kind.CSF, Kind.RATIO, Kind.RATE, Kind.ANTIBODY_INDEX)
                        .contains(code.kind()))
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(FindingCode.class)));
  }

  private static boolean isOfAProtein(FindingCode code) {
    return PROTEINS.contains(code.analyte()) && OF_A_PROTEIN.contains(code.kind());
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
      if (code.kind() == Kind.CSF) {
        chance *= Range.keeping(findings.get(code)).chance(errors.csf(code.analyte()));
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
    Map<Analyte, LogNormal> quotients = new EnumMap<>(Analyte.class);
    for (Analyte protein : PROTEINS) {
      boolean isAsked = codes.stream().anyMatch(c -> c.analyte() == protein && isOfAProtein(c));
      if (isAsked || (protein == Analyte.IGG && igg.isPresent())) {
        quotients.put(protein, errors.quotient(protein));
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
      LogNormal albumin, Range allowed, Map<Analyte, LogNormal> quotients, Optional<KeptIgg> igg) {
    NormalRule.Bends bends = allowed.bendsOf(albumin);
    quotients.forEach(
        (protein, quotient) -> {
          QuotientLimits limits = rules.limits(protein);
          Range index = Range.keeping(findings.get(FindingCode.of(Kind.INDEX, protein)));
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
      Map<Analyte, LogNormal> quotients,
      Optional<KeptIgg> igg) {
    double chance = 1;
    for (Map.Entry<Analyte, LogNormal> entry : quotients.entrySet()) {
      Range range = range(entry.getKey(), albumin, codes);
      chance *=
          entry.getKey() == Analyte.IGG && igg.isPresent()
              ? igg.get().chance(range, albumin)
              : range.chance(entry.getValue());
    }
    return chance;
  }

  private Range range(Analyte protein, double albumin, Set<FindingCode> codes) {
    FindingCode quotient = FindingCode.of(Kind.QUOTIENT, protein);
    FindingCode fraction = FindingCode.of(Kind.FRACTION, protein);
    FindingCode index = FindingCode.of(Kind.INDEX, protein);
    Range range = Range.ALL;
    Limits limits = limits(rules.limits(protein), albumin);
    if (codes.contains(quotient)) {
      range = range.and(Range.of(limits, findings.verdict(quotient)));
    }
    if (codes.contains(fraction)) {
      Limits upper = Limits.upper(limits.above().orElseThrow());
      range = range.and(Range.of(upper, findings.verdict(fraction)));
    }
    return codes.contains(index)
        ? range.and(Range.keeping(findings.get(index)).times(albumin))
        : range;
  }

  private static Limits limits(QuotientLimits of, double albumin) {
    Limits upper = Limits.upper(Threshold.over(of.upper().at(albumin)));
    return of.lower().map((Hyperbola l) -> upper.withLower(l.at(albumin))).orElse(upper);
  }
}
