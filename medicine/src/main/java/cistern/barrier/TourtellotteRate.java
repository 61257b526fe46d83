package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.Optional;

/**
 * IgG synthesis rate in mg/d (Tourtellotte): F·{[IgG_c − IgG_s/369] − [Alb_c −
 * Alb_s/230]·(IgG_s/Alb_s)·0.43}, concentrations in mg/L and F the daily CSF in L. Negative values
 * are legitimate and kept.
 */
public final class TourtellotteRate {

  private static final Sample CSF = Sample.csf(Analyte.IGG);
  private static final Sample SERUM = Sample.serum(Analyte.IGG);
  private static final String KEY = "igg-synthesis-rate";

  private final double flow;
  private final double molarRatio;
  private final double leakage;
  private final Limits limits;
  private final Grounds grounds;

  private TourtellotteRate(Facts facts) {
    flow = facts.number(KEY + ".csf-per-day");
    molarRatio = facts.number(KEY + ".molar-mass-ratio");
    leakage =
        1 / facts.number(KEY + ".normal-igg-ratio")
            - molarRatio / facts.number(KEY + ".normal-albumin-ratio");
    limits =
        Limits.upper(Threshold.over(facts.number(KEY + ".upper")))
            .withLower(facts.number(KEY + ".lower"));
    grounds =
        facts.grounds(
            KEY + ".csf-per-day",
            KEY + ".normal-igg-ratio",
            KEY + ".normal-albumin-ratio",
            KEY + ".molar-mass-ratio",
            KEY + ".upper",
            KEY + ".lower");
  }

  /** The rate under some facts. */
  public static TourtellotteRate of(Facts facts) {
    return new TourtellotteRate(facts);
  }

  /** CSF made in a day, L/d. */
  public double csfPerDay() {
    return flow;
  }

  /** The IgG quotient that the rate takes as leaked where the albumin quotient is zero. */
  public double leakage() {
    return leakage;
  }

  /** How much that quotient rises with the albumin quotient. */
  public double molarRatio() {
    return molarRatio;
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Inputs inputs =
        Inputs.of(panel, CSF, SERUM, AlbuminQuotient.CSF, AlbuminQuotient.SERUM)
            .dividingBy(SERUM, AlbuminQuotient.SERUM);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(
          FindingCode.IGG_SYNTHESIS_RATE, grounds, inputs.present(), obstacle.get());
    }
    Interval rate =
        rate(inputs.interval(CSF), inputs.interval(SERUM), AlbuminQuotient.quotient(inputs));
    Finding finding =
        Finding.of(FindingCode.IGG_SYNTHESIS_RATE, rate, grounds, inputs.present())
            .withVerdict(limits.judge(rate), limits, Optional.empty());
    return inputs.doubt().map(finding::withDoubt).orElse(finding);
  }

  private Interval rate(Interval csf, Interval serum, Interval albumin) {
    boolean isCensored = csf.censored() || serum.censored() || albumin.censored();
    return new Interval(
        rate(csf.lower(), serum.upper(), albumin.upper()),
        rate(csf.upper(), serum.lower(), albumin.lower()),
        isCensored);
  }

  /**
   * The same formula with the serum terms gathered: F·{IgG_c − IgG_s·[1/369 − 0.43/230 +
   * 0.43·QAlb]}.
   */
  private double rate(double csfIgg, double serumIgg, double albuminQuotient) {
    double leaked = serumIgg == 0 ? 0 : serumIgg * (leakage + molarRatio * albuminQuotient);
    return flow * (csfIgg - leaked);
  }
}
