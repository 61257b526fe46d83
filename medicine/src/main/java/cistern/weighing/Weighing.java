package cistern.weighing;

import cistern.analysis.Puncture;
import cistern.bands.BandPattern;
import cistern.criteria.Criteria;
import cistern.criteria.CriteriaResult;
import cistern.criteria.CsfPositivity;
import cistern.differential.Differential;
import cistern.differential.Observations;
import cistern.differential.Trait;
import cistern.differential.Witness;
import cistern.fact.Facts;
import cistern.redflag.FlagInput;
import cistern.redflag.RedFlags;
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
  public Weighed weigh(Puncture puncture, ClinicalPicture clinical) {
    CsfPositivity fluid = CsfPositivity.of(puncture, facts);
    Observations heard =
        Observations.of(puncture.findings(), fluid.bands(), clinical.serology(), facts);
    List<CriteriaResult> results = criteria.interpret(clinical.evidence(), fluid);
    return new Weighed(
        results,
        criteria.difference(clinical.evidence(), fluid, results),
        criteria.prompts(clinical.evidence(), puncture.panel().panel().person().ageYears()),
        fluid,
        differential.interpret(heard, clinical.prior(), isAlike(puncture)),
        RedFlags.check(new FlagInput(puncture, fluid.bands(), clinical.serology(), facts)),
        new NextItems(puncture, clinical, fluid, heard, new Sources(criteria, differential, facts))
            .ranked(),
        puncture(clinical, fluid, heard),
        clinical.evidence().contradictions());
  }

  private static boolean isAlike(Puncture puncture) {
    return puncture.bands().pattern().filter(p -> p == BandPattern.SYSTEMIC).isPresent();
  }

  private PunctureOutlook puncture(
      ClinicalPicture clinical, CsfPositivity fluid, Observations heard) {
    return new PunctureOutlook(
        criteria.puncture(clinical.evidence(), fluid),
        differential.outcome(
            heard.without(Witness.INTRATHECAL_SYNTHESIS), clinical.prior(), Trait.BANDS),
        clinical.prior().isPresent());
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
