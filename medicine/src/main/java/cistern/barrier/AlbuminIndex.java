package cistern.barrier;

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
 * A quotient over the albumin quotient: the IgG index (Tibbling, Link and Öhman 1977) and the
 * indices of the same form for IgA, IgM, λ and κ (Deisenhammer 2025 for the limit of κ).
 */
public final class AlbuminIndex {

  private final Analyte analyte;
  private final FindingCode code;
  private final Limits limits;
  private final Grounds grounds;

  private AlbuminIndex(Analyte analyte, FindingCode code, Limits limits, Grounds grounds) {
    this.analyte = analyte;
    this.code = code;
    this.limits = limits;
    this.grounds = grounds;
  }

  /** The five indices under some facts, in the order in which they are listed. */
  public static List<AlbuminIndex> all(Facts facts) {
    Threshold iggGrey = Threshold.from(facts.number("igg-index.borderline"));
    Threshold kappaGrey = Threshold.from(facts.number("kappa-index.borderline"));
    return List.of(
        new AlbuminIndex(
            Analyte.IGG,
            FindingCode.IGG_INDEX,
            Limits.grey(iggGrey, Threshold.over(facts.number("igg-index.upper"))),
            facts.grounds("igg-index.formula", "igg-index.borderline", "igg-index.upper")),
        unlimited(facts, Analyte.IGA, FindingCode.IGA_INDEX),
        unlimited(facts, Analyte.IGM, FindingCode.IGM_INDEX),
        unlimited(facts, Analyte.LAMBDA, FindingCode.LAMBDA_INDEX),
        new AlbuminIndex(
            Analyte.KAPPA,
            FindingCode.KAPPA_INDEX,
            Limits.grey(kappaGrey, Threshold.from(facts.number("kappa-index.upper"))),
            facts.grounds("kappa-index.borderline", "kappa-index.upper")));
  }

  private static AlbuminIndex unlimited(Facts facts, Analyte analyte, FindingCode code) {
    return new AlbuminIndex(analyte, code, Limits.NONE, facts.grounds("igg-index.formula"));
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Sample csf = Sample.csf(analyte);
    Sample serum = Sample.serum(analyte);
    Inputs inputs =
        Inputs.of(panel, csf, serum, AlbuminQuotient.CSF, AlbuminQuotient.SERUM)
            .dividingBy(serum, AlbuminQuotient.CSF, AlbuminQuotient.SERUM);
    Optional<String> obstacle = inputs.obstacle();
    if (obstacle.isPresent()) {
      return Finding.withoutValue(code, grounds, inputs.present(), obstacle.get());
    }
    Interval index = inputs.quotient(csf, serum).dividedBy(AlbuminQuotient.quotient(inputs));
    Finding finding = Finding.of(code, index, grounds, inputs.present());
    Finding judged = limits.isKnown() ? judged(finding, index) : unjudged(finding);
    return inputs.doubt().map(judged::withDoubt).orElse(judged);
  }

  private Finding judged(Finding finding, Interval index) {
    Verdict verdict = limits.judge(index);
    return finding.withVerdict(verdict, limits, Optional.empty());
  }

  private static Finding unjudged(Finding finding) {
    return finding.withDoubt("no limit is set for it; local policy may lean on the fraction");
  }
}
