package cistern.statement;

import cistern.bands.BandPattern;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.urgent.Alerts;
import java.util.ArrayList;
import java.util.List;

/** Writes the statements of one puncture, answer first. */
public final class Statements {

  private final Facts facts;
  private final double severeFrom;
  private final double nearChance;
  private final double repeatChance;

  private Statements(Facts facts) {
    this.facts = facts;
    severeFrom = facts.number("albumin-quotient.severe");
    nearChance = facts.number("near-limit.chance");
    repeatChance = facts.number("say.repeat.least-chance");
  }

  /** The statements under some facts. */
  public static Statements of(Facts facts) {
    return new Statements(facts);
  }

  /** The statements that the evidence allows, in the order in which they are read. */
  public List<Statement> of(StatementInput input) {
    Alerts alerts = input.alerts();
    List<Statement> all = new ArrayList<>(FirstOfAll.before(alerts));
    alerts.notes().forEach(note -> all.add(new Said(note.code(), note.text())));
    if (alerts.isSilencing()) {
      all.addAll(whileOpen(input));
      return all;
    }
    Conclusion conclusion = Conclusions.of(input);
    all.add(conclusion);
    Weaknesses.of(input, conclusion, nearChance).map(WeakestLink::new).ifPresent(all::add);
    all.addAll(FirstOfAll.after(alerts));
    all.add(barrier(input));
    input
        .puncture()
        .bands()
        .pattern()
        .filter(p -> p == BandPattern.LADDER || isSystemic(p, alerts))
        .map(BandStatement::new)
        .ifPresent(all::add);
    all.addAll(MarkerStatements.of(input, facts));
    if (!input.criteria().isEmpty() && !alerts.isInfant()) {
      all.add(new CriteriaStatement(input.criteria()));
    }
    if (!alerts.isInfant()) {
      AtypicalForMs.of(input.flags()).ifPresent(all::add);
    }
    input.near(nearChance).stream().map(NearLimit::new).forEach(all::add);
    input
        .repeat()
        .likeliest()
        .filter(change -> change.getValue() >= repeatChance)
        .map(change -> new Repeatability(change.getKey().term(), change.getValue()))
        .ifPresent(all::add);
    all.addAll(NextSteps.of(input));
    return all;
  }

  /** While an urgent rule is open nothing is said that could speak for a disease of its own. */
  private List<Statement> whileOpen(StatementInput input) {
    List<Statement> all = new ArrayList<>();
    all.add(
        new Said(
            "waiting",
            (input.alerts().isInfant()
                    ? "Everything else waits"
                    : "Bands, light chains and criteria wait")
                + " until this has been answered by a named person."));
    all.addAll(FirstOfAll.after(input.alerts()));
    if (input.puncture().finding(FindingCode.ALBUMIN_QUOTIENT).hasValue()) {
      all.add(barrier(input));
    }
    all.addAll(MarkerStatements.of(input, facts));
    NextSteps.of(input).stream().filter(NextStep::isOfTheSample).forEach(all::add);
    return all;
  }

  private Statement barrier(StatementInput input) {
    return new BarrierStatement(
        input.puncture().findings().get(FindingCode.ALBUMIN_QUOTIENT), severeFrom);
  }

  /** Beside blood a shared band may be blood. */
  private static boolean isSystemic(BandPattern pattern, Alerts alerts) {
    return pattern == BandPattern.SYSTEMIC
        && !alerts.isStoppedBy("blood-in-sample")
        && !alerts.isBandsUnknown();
  }
}
