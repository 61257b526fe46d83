package cistern.uncertainty;

import cistern.barrier.BarrierFindings;
import cistern.barrier.BloodCorrection;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.finding.Finding;
import cistern.finding.FindingCode;
import cistern.finding.Findings;
import cistern.finding.Uncertainty;
import cistern.fluid.FluidFindings;
import cistern.fluid.TotalProtein;
import cistern.panel.CheckedPanel;
import cistern.panel.Panel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A panel with its findings and what measurement error leaves open about them. */
record Interpreted(CheckedPanel panel, Findings findings) {

  /** One limit of the protein at every age, as the simulations beside these tests have it. */
  static final Facts FACTS =
      Facts.standard()
          .with(
              new Policy(
                  "one limit",
                  Map.of(
                      TotalProtein.RULE_KEY,
                      new Policy.Change(new FactValue.Word(TotalProtein.FIXED), "test"))));

  static final Uncertainties UNCERTAINTIES = Uncertainties.of(FACTS);

  static Interpreted of(Panel panel) {
    return of(panel, FACTS);
  }

  static Interpreted of(Panel panel, Facts facts) {
    CheckedPanel checked = CheckedPanel.check(panel, facts);
    FluidFindings fluid = FluidFindings.of(facts);
    List<Finding> all = new ArrayList<>(BarrierFindings.of(facts).interpret(checked));
    all.addAll(fluid.interpret(checked));
    all.addAll(
        BloodCorrection.of(facts, fluid.leukocyteLimits(checked), fluid.proteinLimits(checked))
            .interpret(checked));
    return new Interpreted(checked, Uncertainties.of(facts).measure(checked, Findings.of(all)));
  }

  Uncertainty uncertainty(FindingCode code) {
    return findings.get(code).uncertainty();
  }

  RepeatChange repeat() {
    return UNCERTAINTIES.repeat(panel, findings);
  }
}
