package cistern.uncertainty;

import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.measurement.Analyte;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The chance that the verdicts that need the IgG quotient itself are kept, given the albumin
 * quotient: those on antibody indices and on the synthesis rate.
 */
final class KeptIgg {

  /** How often a quotient is put in again. */
  private static final int SUBSTITUTIONS = 12;

  static final Map<FindingCode, Analyte> ANTIBODIES =
      Map.of(
          FindingCode.MEASLES_ANTIBODY_INDEX, Analyte.MEASLES_IGG,
          FindingCode.RUBELLA_ANTIBODY_INDEX, Analyte.RUBELLA_IGG,
          FindingCode.VARICELLA_ZOSTER_ANTIBODY_INDEX, Analyte.VARICELLA_ZOSTER_IGG,
          FindingCode.BORRELIA_ANTIBODY_INDEX, Analyte.BORRELIA_IGG);

  /** An antibody's quotient and the antibody indices that keep the verdict. */
  private record Antibody(LogNormal quotient, Range index) {}

  private final LogNormal quotient;
  private final LogNormal serum;
  private final LogNormal csf;
  private final Curve limit;
  private final Curve leaked;
  private final double csfPerDay;
  private final List<Antibody> antibodies = new ArrayList<>();

  /** The rates that keep the verdict; all where it is not counted. */
  private final Range rate;

  private final boolean isRateCounted;

  /** What is open of the logarithm of serum IgG once the IgG quotient is known. */
  private final double serumSigma;

  KeptIgg(PanelErrors errors, Rules rules, Findings findings, Set<FindingCode> codes) {
    quotient = errors.quotient(Analyte.IGG);
    serum = errors.serum(Analyte.IGG);
    csf = errors.csf(Analyte.IGG);
    serumSigma = quotient.sigma() == 0 ? 0 : serum.sigma() / quotient.sigma() * csf.sigma();
    limit = rules.curve(Analyte.IGG);
    leaked = rules.leaked();
    csfPerDay = rules.csfPerDay();
    ANTIBODIES.forEach(
        (code, analyte) -> {
          if (codes.contains(code)) {
            antibodies.add(
                new Antibody(errors.quotient(analyte), Range.keeping(findings.get(code))));
          }
        });
    rate =
        codes.contains(FindingCode.IGG_SYNTHESIS_RATE)
            ? Range.keeping(findings.get(FindingCode.IGG_SYNTHESIS_RATE))
            : Range.ALL;
    isRateCounted = !rate.equals(Range.ALL);
  }

  /** Whether any of these verdicts is among the codes. */
  static boolean isNeeded(Set<FindingCode> codes) {
    return codes.contains(FindingCode.IGG_SYNTHESIS_RATE)
        || codes.stream().anyMatch(ANTIBODIES::containsKey);
  }

  /** Notes where, over albumin, a verdict changes: a sharp step when IgG is measured precisely. */
  void bend(NormalRule.Bends bends, LogNormal albumin) {
    for (Antibody antibody : antibodies) {
      LogNormal specific = antibody.quotient;
      for (double end : new double[] {antibody.index.lower(), antibody.index.upper()}) {
        bend(bends, albumin, limit, specific.times(1 / end));
      }
    }
    for (double end : new double[] {rate.lower(), rate.upper()}) {
      double share = quotient.median() - end / (csfPerDay * serum.median());
      double sigma = quotient.sigma() * quotient.median() / share;
      bend(bends, albumin, leaked, new LogNormal(share, Math.log(share), sigma));
    }
  }

  private static void bend(
      NormalRule.Bends bends, LogNormal albumin, Curve curve, LogNormal share) {
    double at = curve.inverse(share.median());
    double elasticity = at * curve.slopeAt(at) / share.median();
    Range.bend(bends, albumin, at, share.sigma() / elasticity);
  }

  /** The chance that they are kept and that the IgG quotient stays in a range. */
  double chance(Range range, double albumin) {
    if (range.isEmpty()) {
      return 0;
    }
    double limited = limit.at(albumin);
    double leakedShare = leaked.at(albumin);
    if (quotient.sigma() == 0) {
      return range.chance(quotient) * given(quotient.median(), limited, leakedShare);
    }
    NormalRule.Bends bends = range.bendsOf(quotient);
    Range.bend(bends, quotient, limited, 0);
    for (Antibody antibody : antibodies) {
      LogNormal specific = antibody.quotient;
      Range.bend(bends, quotient, specific.median() / antibody.index.lower(), specific.sigma());
      Range.bend(bends, quotient, specific.median() / antibody.index.upper(), specific.sigma());
    }
    bendAtRate(bends, leakedShare);
    return NormalRule.split(bends).expectation(z -> given(quotient.at(z), limited, leakedShare));
  }

  private void bendAtRate(NormalRule.Bends bends, double leakedShare) {
    if (!isRateCounted) {
      return;
    }
    Range.bend(bends, quotient, leakedShare, 0);
    for (double end : new double[] {rate.lower(), rate.upper()}) {
      double at = quotientOf(end, leakedShare);
      if (at > 0 && at < Double.POSITIVE_INFINITY) {
        Range.bend(bends, quotient, at, serumSigma * Math.abs(1 - leakedShare / at));
      }
    }
  }

  /** The IgG quotient at which the rate takes a value, found by steps of substitution. */
  private double quotientOf(double end, double leakedShare) {
    double before = 0;
    double at = leakedShare + end / (csfPerDay * serum.median());
    for (int step = 0; step < SUBSTITUTIONS && isMoving(before, at); step++) {
      before = at;
      at = leakedShare + end / (csfPerDay * serumGiven(at).median());
    }
    return at;
  }

  private static boolean isMoving(double before, double at) {
    return at != before && at > 0 && at < Double.POSITIVE_INFINITY;
  }

  private double given(double igg, double limited, double leakedShare) {
    double explained = Math.min(igg, limited);
    double chance = 1;
    for (Antibody antibody : antibodies) {
      chance *= antibody.index.times(explained).chance(antibody.quotient);
    }
    return isRateCounted ? chance * rate(igg, leakedShare) : chance;
  }

  /** The rate is F·serum·(QIgG − leaked): a range of the rate is a range of the serum IgG. */
  private double rate(double igg, double leakedShare) {
    double perSerum = csfPerDay * (igg - leakedShare);
    double lower = (perSerum > 0 ? rate.lower() : rate.upper()) / perSerum;
    double upper = (perSerum > 0 ? rate.upper() : rate.lower()) / perSerum;
    if (lower >= upper) {
      return 0;
    }
    return serumSigma == 0
        ? serumGiven(igg).chanceBetween(lower, upper)
        : LogNormal.chanceBetween(muGiven(igg), serumSigma, lower, upper);
  }

  /** Serum IgG once the IgG quotient is known: a high quotient points to a low serum. */
  private LogNormal serumGiven(double igg) {
    if (quotient.sigma() == 0) {
      return serum;
    }
    double mu = muGiven(igg);
    return new LogNormal(Math.exp(mu), mu, serumSigma);
  }

  private double muGiven(double igg) {
    double share = serum.sigma() / quotient.sigma();
    return serum.mu() - share * share * (Math.log(igg) - quotient.mu());
  }
}
