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
  public List<Statement> of(Evidence evidence) {
    List<Statement> all = new ArrayList<>();
    all.add(Answers.of(evidence));
    all.add(new WeakestLink(Weaknesses.of(evidence, !evidence.near(nearChance).isEmpty())));
    all.add(
        new BarrierStatement(evidence.findings().get(FindingCode.ALBUMIN_QUOTIENT), severeFrom));
    evidence
        .bands()
        .pattern()
        .filter(p -> p == BandPattern.SYSTEMIC || p == BandPattern.LADDER)
        .map(BandStatement::new)
        .ifPresent(all::add);
    if (evidence.isAbove(FindingCode.IGG_INDEX)
        && evidence.bands().verdict() == BandVerdict.NEGATIVE) {
      all.add(new IndexWithoutBands());
    }
    if (!evidence.criteria().isEmpty()) {
      all.add(new CriteriaStatement(evidence.criteria()));
    }
    AtypicalForMs.of(evidence.flags()).ifPresent(all::add);
    evidence.near(nearChance).stream().map(NearLimit::new).forEach(all::add);
    if (!evidence.repeat().each().isEmpty()) {
      all.add(new Repeatability(evidence.repeat().any()));
    }
    all.addAll(NextSteps.of(evidence));
    return all;
  }
}
