package cistern.fluid;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Limits;
import cistern.finding.Threshold;
import cistern.finding.Verdict;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;
import java.util.List;
import java.util.Optional;

/**
 * CSF glucose over serum glucose; its lower limit, the 5th percentile, falls with the serum glucose
 * (Hegen 2014, PMID 24731954).
 */
public final class GlucoseRatio {

  private static final Sample CSF = Sample.csf(Analyte.GLUCOSE);
  private static final Sample SERUM = Sample.serum(Analyte.GLUCOSE);
  private static final String RULE = "hegen-2014";
  private static final String MIDDLE_FROM = "glucose-ratio.middle-serum.from";
  private static final String HIGH_FROM = "glucose-ratio.high-serum.from";
  private static final String MOLAR_MASS = "molar-mass.glucose";
  private static final double MG_PER_L_IN_MG_PER_DL = 10;

  private final Facts facts;
  private final Grounds grounds;

  private GlucoseRatio(Facts facts) {
    this.facts = facts;
    this.grounds = facts.grounds("glucose-ratio.low-serum.lower");
  }

  /** The ratio under some facts. */
  public static GlucoseRatio of(Facts facts) {
    return new GlucoseRatio(facts);
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Inputs inputs = Inputs.of(panel, CSF, SERUM).dividingBy(SERUM);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(
          FindingCode.GLUCOSE_RATIO, grounds, inputs.present(), obstacle.get());
    }
    Interval ratio = inputs.quotient(CSF, SERUM);
    Interval serum = inputs.interval(SERUM);
    Limits atLowRatio = limits(serum.upper());
    Limits atHighRatio = limits(serum.lower());
    Limits shown = atLowRatio.equals(atHighRatio) ? atLowRatio : Limits.NONE;
    Finding finding =
        Finding.of(FindingCode.GLUCOSE_RATIO, ratio, grounds, inputs.present())
            .withVerdict(atLowRatio.judge(ratio, atHighRatio), shown, Optional.of(RULE));
    return inputs.doubt().map(finding::withDoubt).orElse(finding);
  }

  /** The serum glucose in mmol/L from which the next limit holds, rising. */
  public List<Double> steps() {
    return List.of(mmolPerL(MIDDLE_FROM), mmolPerL(HIGH_FROM));
  }

  /** The limit at a serum glucose in mmol/L. */
  public Limits limits(double serum) {
    if (!isFrom(serum, HIGH_FROM)) {
      return Limits.lower(
          facts.number(
              isFrom(serum, MIDDLE_FROM)
                  ? "glucose-ratio.middle-serum.lower"
                  : "glucose-ratio.low-serum.lower"));
    }
    return Limits.lower(facts.number("glucose-ratio.high-serum.lower"));
  }

  private boolean isFrom(double serum, String mgPerDl) {
    return Limits.upper(Threshold.from(mmolPerL(mgPerDl))).judge(Interval.of(serum))
        == Verdict.ABOVE;
  }

  private double mmolPerL(String mgPerDl) {
    return facts.number(mgPerDl) * MG_PER_L_IN_MG_PER_DL / facts.number(MOLAR_MASS);
  }
}
