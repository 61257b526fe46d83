package cistern.statement;

import cistern.bands.BandPattern;
import cistern.bands.BandVerdict;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import java.util.ArrayList;
import java.util.List;

/** Writes the statements of one puncture, answer first. */
public final class Statements {

  private final double severeFrom;
  private final double nearChance;

  private Statements(double severeFrom, double nearChance) {
    this.severeFrom = severeFrom;
    this.nearChance = nearChance;
  }

  /** The statements under some facts. */
  public static Statements of(Facts facts) {
    return new Statements(
        facts.number("albumin-quotient.severe"), facts.number("near-limit.chance"));
  }

  /** The statements that the evidence allows, in the order in which they are read. */
  public List<Statement> of(StatementInput input) {
    List<Statement> all = new ArrayList<>();
    all.add(Conclusions.of(input));
    all.add(new WeakestLink(Weaknesses.of(input, !input.near(nearChance).isEmpty())));
    all.add(
        new BarrierStatement(input.puncture().finding(FindingCode.ALBUMIN_QUOTIENT), severeFrom));
    input
        .puncture()
        .bands()
        .pattern()
        .filter(p -> p == BandPattern.SYSTEMIC || p == BandPattern.LADDER)
        .map(BandStatement::new)
        .ifPresent(all::add);
    if (input.puncture().isAbove(FindingCode.IGG_INDEX)
        && input.puncture().bands().verdict() == BandVerdict.NEGATIVE) {
      all.add(new IndexWithoutBands());
    }
    if (!input.criteria().isEmpty()) {
      all.add(new CriteriaStatement(input.criteria()));
    }
    AtypicalForMs.of(input.flags()).ifPresent(all::add);
    input.near(nearChance).stream().map(NearLimit::new).forEach(all::add);
    if (!input.repeat().each().isEmpty()) {
      all.add(new Repeatability(input.repeat().any()));
    }
    all.addAll(NextSteps.of(input));
    return all;
  }
}
