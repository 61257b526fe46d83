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
import java.util.List;
import java.util.Optional;

/**
 * Antibody index AI = Qspec / min(QIgG, Qlim): specific antibody made in the CNS against what the
 * total IgG explains (Reiber and Lange 1991, PMID 1855284). Any unit that is the same in both
 * fluids.
 */
public final class ReiberLangeAntibodyIndex {

  private static final Sample CSF_IGG = Sample.csf(Analyte.IGG);
  private static final Sample SERUM_IGG = Sample.serum(Analyte.IGG);

  private final Analyte analyte;
  private final FindingCode code;
  private final Limits limits;
  private final QuotientLimits igg;
  private final Grounds grounds;

  private ReiberLangeAntibodyIndex(Facts facts, Analyte analyte, FindingCode code) {
    this.analyte = analyte;
    this.code = code;
    String upper = code.code() + ".upper";
    String grey = code.code() + ".borderline";
    limits = Limits.grey(Threshold.over(facts.number(grey)), Threshold.from(facts.number(upper)));
    igg = QuotientLimits.of(facts, Analyte.IGG);
    grounds = facts.grounds("antibody-index.formula", upper, grey).and(igg.grounds());
  }

  /** Measles, rubella, varicella-zoster and Borrelia, in this order. */
  public static List<ReiberLangeAntibodyIndex> all(Facts facts) {
    return List.of(
        new ReiberLangeAntibodyIndex(
            facts, Analyte.MEASLES_IGG, FindingCode.MEASLES_ANTIBODY_INDEX),
        new ReiberLangeAntibodyIndex(
            facts, Analyte.RUBELLA_IGG, FindingCode.RUBELLA_ANTIBODY_INDEX),
        new ReiberLangeAntibodyIndex(
            facts, Analyte.VARICELLA_ZOSTER_IGG, FindingCode.VARICELLA_ZOSTER_ANTIBODY_INDEX),
        new ReiberLangeAntibodyIndex(
            facts, Analyte.BORRELIA_IGG, FindingCode.BORRELIA_ANTIBODY_INDEX));
  }

  /** The finding of a panel, whose verdict does not yet heed doubts about the pair. */
  Finding judged(CheckedPanel panel) {
    Inputs inputs = inputs(panel);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(code, grounds, inputs.present(), obstacle.get());
    }
    Interval index =
        inputs.quotient(Sample.csf(analyte), Sample.serum(analyte)).dividedBy(expected(inputs));
    Finding finding =
        Finding.of(code, index, grounds, inputs.present())
            .withVerdict(limits.judge(index), limits, Optional.of(igg.rule()));
    Interval serum = inputs.interval(Sample.serum(analyte));
    boolean isSeronegative = serum.censored() && serum.lower() == 0;
    return isSeronegative
        ? finding.withDoubt("the serum antibody is under its limit: only a lower bound is known")
        : finding;
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Finding finding = judged(panel);
    return finding.hasValue()
        ? inputs(panel).doubt().map(finding::withDoubt).orElse(finding)
        : finding;
  }

  private Inputs inputs(CheckedPanel panel) {
    return Inputs.of(
            panel,
            Sample.csf(analyte),
            Sample.serum(analyte),
            CSF_IGG,
            SERUM_IGG,
            AlbuminQuotient.CSF,
            AlbuminQuotient.SERUM)
        .dividingBy(Sample.serum(analyte), CSF_IGG, SERUM_IGG, AlbuminQuotient.SERUM);
  }

  private Interval expected(Inputs inputs) {
    Interval total = inputs.quotient(CSF_IGG, SERUM_IGG);
    Interval albumin = AlbuminQuotient.quotient(inputs);
    return new Interval(
        Math.min(total.lower(), igg.upper().at(albumin.lower())),
        Math.min(total.upper(), igg.upper().at(albumin.upper())),
        total.censored() || albumin.censored());
  }
}
