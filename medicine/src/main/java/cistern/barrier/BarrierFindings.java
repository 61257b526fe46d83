package cistern.barrier;

import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.panel.CheckedPanel;
import java.util.ArrayList;
import java.util.List;

/** Every rule of this package under one set of facts. */
public final class BarrierFindings {

  private final AlbuminQuotient albumin;
  private final List<IntrathecalSynthesis> syntheses;
  private final LambdaQuotient lambda;
  private final List<AlbuminIndex> indices;
  private final TourtellotteRate rate;
  private final List<ReiberLangeAntibodyIndex> antibodies;
  private final MrzReaction mrz;

  private BarrierFindings(Facts facts) {
    albumin = AlbuminQuotient.of(facts);
    syntheses = IntrathecalSynthesis.all(facts);
    lambda = LambdaQuotient.of(facts);
    indices = AlbuminIndex.all(facts);
    rate = TourtellotteRate.of(facts);
    antibodies = ReiberLangeAntibodyIndex.all(facts);
    mrz = MrzReaction.of(facts);
  }

  /** The rules under some facts. */
  public static BarrierFindings of(Facts facts) {
    return new BarrierFindings(facts);
  }

  /** The albumin quotient, whose other adult rule may disagree. */
  public AlbuminQuotient albumin() {
    return albumin;
  }

  /** The findings of a panel. */
  public List<Finding> interpret(CheckedPanel panel) {
    List<Finding> findings = new ArrayList<>();
    findings.add(albumin.interpret(panel));
    syntheses.forEach(s -> findings.addAll(s.interpret(panel)));
    findings.add(lambda.interpret(panel));
    indices.forEach(i -> findings.add(i.interpret(panel)));
    findings.add(rate.interpret(panel));
    antibodies.forEach(a -> findings.add(a.interpret(panel)));
    findings.add(mrz.interpret(panel));
    return findings;
  }
}
