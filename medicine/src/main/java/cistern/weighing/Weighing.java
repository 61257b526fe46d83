package cistern.weighing;

import cistern.analysis.Puncture;
import cistern.criteria.Criteria;
import cistern.criteria.CriteriaResult;
import cistern.criteria.CsfPositivity;
import cistern.criteria.Restraint;
import cistern.differential.Differential;
import cistern.differential.Observations;
import cistern.differential.Probabilities;
import cistern.differential.Probability;
import cistern.fact.Facts;
import cistern.redflag.FlagInput;
import cistern.redflag.RedFlag;
import cistern.redflag.RedFlags;
import cistern.urgent.Alerts;
import java.util.List;
import java.util.Optional;

/** Weighs everything that is known of one person under one set of facts. */
public final class Weighing {

  private static final String OPEN = "something that must be settled first stands before it";

  private final Facts facts;
  private final Probabilities probabilities;
  private final Criteria criteria;
  private final Differential differential;

  private Weighing(Facts facts) {
    this.facts = facts;
    criteria = Criteria.of(facts);
    differential = Differential.of(facts);
    probabilities = Probabilities.of(facts);
  }

  /** A weighing under some facts. */
  public static Weighing of(Facts facts) {
    return new Weighing(facts);
  }

  /** What everything says together. */
  public Weighed weigh(Puncture puncture, ClinicalPicture clinical, Alerts alerts) {
    Restraint restraint = restraint(alerts);
    CsfPositivity fluid = CsfPositivity.of(puncture, restraint, facts);
    Observations heard =
        Observations.of(puncture.findings(), fluid.bands(), clinical.serology(), facts);
    List<CriteriaResult> results = criteria.interpret(clinical.evidence(), fluid, restraint);
    List<RedFlag> flags = flags(puncture, clinical, fluid);
    Probability probability = probability(puncture, clinical, fluid, alerts, flags);
    return new Weighed(
        results,
        restraint.isContradicted()
            ? Optional.empty()
            : criteria.difference(clinical.evidence(), fluid, results),
        criteria.prompts(clinical.evidence(), puncture.panel().panel().person().ageYears()),
        fluid,
        differential.interpret(heard, clinical.prior(), probability),
        flags,
        new NextItems(puncture, clinical, fluid, criteria, facts).ranked(probability),
        new PunctureOutlook(criteria.puncture(clinical.evidence(), fluid)),
        clinical.evidence().contradictions());
  }

  /** The verdicts and the number alone, as {@link #weigh} gives them. */
  public Judgement judge(Puncture puncture, ClinicalPicture clinical, Alerts alerts) {
    Restraint restraint = restraint(alerts);
    CsfPositivity fluid = CsfPositivity.of(puncture, restraint, facts);
    return new Judgement(
        criteria.verdicts(clinical.evidence(), fluid, restraint),
        probability(puncture, clinical, fluid, alerts, flags(puncture, clinical, fluid)));
  }

  private List<RedFlag> flags(Puncture puncture, ClinicalPicture clinical, CsfPositivity fluid) {
    return RedFlags.check(new FlagInput(puncture, fluid.bands(), clinical.serology(), facts));
  }

  private Probability probability(
      Puncture puncture,
      ClinicalPicture clinical,
      CsfPositivity fluid,
      Alerts alerts,
      List<RedFlag> flags) {
    return alerts.isSilentOfMs()
        ? Probability.none(
            Probability.Status.OUTSIDE_DOMAIN, Optional.empty(), clinical.prior(), OPEN)
        : new Domain(puncture, clinical, fluid, criteria, probabilities).probability(flags);
  }

  private static Restraint restraint(Alerts alerts) {
    return new Restraint(
        alerts.isContradicted(),
        alerts.isBandsUnknown(),
        alerts.isKappaUnknown(),
        alerts.kappaRaisedAlsoBy());
  }
}
