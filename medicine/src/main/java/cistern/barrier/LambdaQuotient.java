package cistern.barrier;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.measurement.Analyte;
import cistern.measurement.Sample;
import cistern.panel.CheckedPanel;
import cistern.panel.Inputs;

/** The λ light chain quotient, for which no limit is established. */
public final class LambdaQuotient {

  private final Grounds grounds;

  private LambdaQuotient(Grounds grounds) {
    this.grounds = grounds;
  }

  /** The quotient under some facts. */
  public static LambdaQuotient of(Facts facts) {
    return new LambdaQuotient(facts.grounds("quotient.formula"));
  }

  /** The finding of a panel. */
  public Finding interpret(CheckedPanel panel) {
    Sample csf = Sample.csf(Analyte.LAMBDA);
    Sample serum = Sample.serum(Analyte.LAMBDA);
    Inputs inputs = Inputs.of(panel, csf, serum).dividingBy(serum);
    return inputs
        .obstacle()
        .map(
            reason ->
                Finding.withoutValue(
                    FindingCode.LAMBDA_QUOTIENT, grounds, inputs.present(), reason))
        .orElseGet(
            () ->
                Finding.of(
                        FindingCode.LAMBDA_QUOTIENT,
                        inputs.quotient(csf, serum),
                        grounds,
                        inputs.present())
                    .withDoubt("no limit is established for λ"));
  }
}
