package cistern.weighing;

import cistern.bands.BandPattern;
import cistern.criteria.Criteria;
import cistern.criteria.CriteriaResult;
import cistern.criteria.CsfPositivity;
import cistern.differential.Differential;
import cistern.differential.Observations;
import cistern.differential.Trait;
import cistern.differential.Witness;
import cistern.fact.Facts;
import cistern.finding.FindingCode;
import cistern.redflag.RedFlags;
import cistern.redflag.Seen;
import java.util.List;

/** Weighs everything that is known of one person under one set of facts. */
public final class Weighing {

  private final Facts facts;
  private final Criteria criteria;
  private final Differential differential;

  private Weighing(Facts facts) {
    this.facts = facts;
    criteria = Criteria.of(facts);
    differential = Differential.of(facts);
  }

  /** A weighing under some facts. */
  public static Weighing of(Facts facts) {
    return new Weighing(facts);
  }

  /** What everything says together. */
  public Weighed weigh(Given given) {
    CsfPositivity fluid =
        CsfPositivity.of(
            given.panel(), given.bands(), given.findings().get(FindingCode.KAPPA_INDEX), facts);
    Observations heard = Observations.of(given.findings(), fluid.bands(), given.serology(), facts);
    List<CriteriaResult> results = criteria.interpret(given.evidence(), fluid);
    Seen seen =
        new Seen(
            given.panel(), given.findings(), given.bands(), fluid.bands(), given.serology(), facts);
    return new Weighed(
        results,
        criteria.difference(given.evidence(), fluid, results),
        criteria.prompts(given.evidence(), given.panel().panel().person().ageYears()),
        fluid,
        differential.interpret(heard, given.prior(), isAlike(seen)),
        RedFlags.check(seen),
        new NextItems(given, fluid, heard, new Sources(criteria, differential, facts)).ranked(),
        puncture(given, fluid, heard),
        given.evidence().contradictions());
  }

  private static boolean isAlike(Seen seen) {
    return seen.reading().pattern().filter(p -> p == BandPattern.SYSTEMIC).isPresent();
  }

  private PunctureOutlook puncture(Given given, CsfPositivity fluid, Observations heard) {
    return new PunctureOutlook(
        criteria.puncture(given.evidence(), fluid),
        differential.outcome(
            heard.without(Witness.INTRATHECAL_SYNTHESIS), given.prior(), Trait.BANDS),
        given.prior().isPresent());
  }

  /**
   * Where the expectations come from.
   *
   * @param criteria both editions
   * @param differential the model
   * @param facts the burdens
   */
  record Sources(Criteria criteria, Differential differential, Facts facts) {}
}
