package cistern.interpretation;

import cistern.analysis.Puncture;
import cistern.bands.BandReading;
import cistern.barrier.AntigenExcessSuspected;
import cistern.barrier.BarrierFindings;
import cistern.barrier.BloodCorrection;
import cistern.conflict.Conflict;
import cistern.conflict.Conflicts;
import cistern.fact.Facts;
import cistern.fact.Status;
import cistern.finding.Finding;
import cistern.finding.Findings;
import cistern.finding.Problem;
import cistern.finding.UnitProfile;
import cistern.fluid.FluidFindings;
import cistern.panel.CheckedPanel;
import cistern.statement.StatementInput;
import cistern.statement.Statements;
import cistern.uncertainty.RepeatChange;
import cistern.uncertainty.Uncertainties;
import cistern.urgent.Alerts;
import cistern.urgent.Observed;
import cistern.urgent.Withheld;
import cistern.weighing.Weighed;
import cistern.weighing.Weighing;
import java.util.ArrayList;
import java.util.List;

/** Interprets work-ups under one set of facts. */
public final class Interpreter {

  private final Facts facts;
  private final UnitProfile units;
  private final BarrierFindings barrier;
  private final FluidFindings fluid;
  private final Uncertainties uncertainties;
  private final Conflicts conflicts;
  private final Statements statements;
  private final Weighing weighing;
  private final PuncturePlanning planning;

  private Interpreter(Facts facts) {
    this.facts = facts;
    units = UnitProfile.of(facts);
    barrier = BarrierFindings.of(facts);
    fluid = FluidFindings.of(facts);
    uncertainties = Uncertainties.of(facts);
    conflicts = Conflicts.of(facts);
    statements = Statements.of(facts);
    weighing = Weighing.of(facts);
    planning = PuncturePlanning.of(facts);
  }

  /** An interpreter under some facts. */
  public static Interpreter of(Facts facts) {
    return facts.once(Interpreter.class, Interpreter::new);
  }

  /** What of a work-up is counted over many. */
  public Judged judge(Workup workup) {
    return inUnitsOf(workup).judged(workup);
  }

  /** An interpreter that writes in the units of the laboratory that a work-up names. */
  private Interpreter inUnitsOf(Workup workup) {
    return workup.remarks().laboratory().map(facts::at).map(Interpreter::of).orElse(this);
  }

  private Judged judged(Workup workup) {
    Observed observed = observed(workup);
    Puncture puncture = puncture(workup, observed.panel(), Withheld.of(observed), observed.bands());
    return new Judged(
        workup, puncture, weighing.judge(puncture, workup.clinical(), before(workup, puncture)));
  }

  /** What the findings show before a verdict is withheld. */
  private Observed observed(Workup workup) {
    CheckedPanel panel = CheckedPanel.check(workup.panel(), facts);
    BandReading bands = BandReading.of(workup.bands(), facts);
    return AtFirst.observed(workup, puncture(workup, panel, computed(panel), bands), facts);
  }

  private Puncture puncture(
      Workup workup, CheckedPanel panel, Findings findings, BandReading bands) {
    return new Puncture(workup.id(), panel, findings, bands, units);
  }

  private Alerts before(Workup workup, Puncture puncture) {
    return Alerts.of(AtFirst.observed(workup, puncture, facts), planning.afterCare(workup));
  }

  /** What a work-up says. */
  public Interpretation interpret(Workup workup) {
    return inUnitsOf(workup).interpretation(workup);
  }

  private Interpretation interpretation(Workup workup) {
    Observed observed = observed(workup);
    CheckedPanel panel = observed.panel();
    Findings findings = uncertainties.measure(panel, Withheld.of(observed));
    Puncture puncture = puncture(workup, panel, findings, observed.bands());
    Alerts before = before(workup, puncture);
    List<Problem> problems = new ArrayList<>(workup.problems());
    problems.addAll(panel.problems());
    problems.addAll(AntigenExcessSuspected.check(workup.panel(), findings::get));
    List<Conflict> disagreements = conflicts.check(puncture);
    RepeatChange repeat = uncertainties.repeat(panel, findings);
    Weighed weighed = weighing.weigh(puncture, workup.clinical(), before);
    Alerts alerts = AtFirst.whenMet(before, observed, weighed.criteria());
    problems.addAll(weighed.problems());
    StatementInput input =
        new StatementInput(
            puncture,
            disagreements,
            problems,
            repeat,
            workup.clinical().isEvidenceStated() ? weighed.criteria() : List.of(),
            weighed.flags(),
            alerts);
    return new Interpretation(
        workup,
        facts.version(),
        facts.policy(),
        puncture,
        repeat,
        alerts,
        weighed,
        disagreements,
        statements.of(input),
        problems,
        cautions(workup, findings));
  }

  private Findings computed(CheckedPanel panel) {
    List<Finding> all = new ArrayList<>(barrier.interpret(panel));
    all.addAll(fluid.interpret(panel));
    all.addAll(
        BloodCorrection.of(facts, fluid.leukocyteLimits(panel), fluid.proteinLimits(panel))
            .interpret(panel));
    return Findings.of(all.stream().map(f -> f.withUnits(units)).toList());
  }

  private static List<Caution> cautions(Workup workup, Findings findings) {
    List<Caution> all =
        new ArrayList<>(
            List.of(Caution.RESEARCH_ONLY, Caution.LOCAL_PRACTICE, Caution.NOT_SPECIFIC));
    boolean isRecalled =
        findings.all().stream()
            .anyMatch(f -> f.hasValue() && f.grounds().status() == Status.MEMORY);
    if (isRecalled) {
      all.add(Caution.CONSTANTS_UNCONFIRMED);
    }
    if (workup.remarks().isInvented()) {
      all.add(Caution.INVENTED);
    }
    return all;
  }
}
