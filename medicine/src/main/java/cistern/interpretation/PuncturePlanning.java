package cistern.interpretation;

import cistern.criteria.Item;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Panel;
import cistern.panel.Person;
import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlans;
import cistern.puncture.ResultEffect;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.urgent.Urgency;
import cistern.urgent.Urgent;
import java.util.List;
import java.util.Optional;

/** Composes the plan for a puncture from a work-up and its interpretation. */
public final class PuncturePlanning {

  private final Facts facts;
  private final PuncturePlans plans;

  private PuncturePlanning(Facts facts) {
    this.facts = facts;
    plans = PuncturePlans.of(facts);
  }

  /** Plans under some facts. */
  public static PuncturePlanning of(Facts facts) {
    return facts.once(PuncturePlanning.class, PuncturePlanning::new);
  }

  /** The plan for the puncture of a work-up. */
  public PuncturePlan interpret(Interpretation interpretation) {
    Workup workup = interpretation.workup();
    List<Urgency> afterwards = afterCare(workup);
    Urgent fluid = interpretation.alerts().urgent().without(afterwards);
    return inUnitsOf(workup)
        .plans
        .of(workup.procedure(), subject(workup, fluid), effects(interpretation));
  }

  /** Plans that are written in the units of the laboratory that a work-up names. */
  private PuncturePlanning inUnitsOf(Workup workup) {
    return workup.remarks().laboratory().map(facts::at).map(PuncturePlanning::of).orElse(this);
  }

  /** What holds after the puncture of a work-up and must be said first, whatever its fluid says. */
  List<Urgency> afterCare(Workup workup) {
    return plans.urgentAfterwards(workup.procedure(), subject(workup, Urgent.NONE)).stream()
        .filter(Urgency::holds)
        .toList();
  }

  private static List<ResultEffect> effects(Interpretation interpretation) {
    return interpretation.weighed().puncture().effects().entrySet().stream()
        .map(e -> new ResultEffect(e.getKey(), effect(e.getValue())))
        .toList();
  }

  private static ResultEffect.Effect effect(cistern.criteria.PunctureEffect effect) {
    return switch (effect) {
      case DECISIVE -> ResultEffect.Effect.DECISIVE;
      case UNRESOLVED -> ResultEffect.Effect.UNRESOLVED;
      case NARROWS -> ResultEffect.Effect.NARROWS;
      case NO_EFFECT -> ResultEffect.Effect.NO_EFFECT;
    };
  }

  private static PuncturedPerson subject(Workup workup, Urgent fluid) {
    Panel panel = workup.panel();
    return new PuncturedPerson(
        panel.person().ageYears(),
        panel.person().sex(),
        panel.answer(Circumstance.PREGNANCY),
        workup.clinical().evidence().answer(Item.HEADACHE_DISORDER),
        draw(panel),
        kidney(panel.person().body()),
        new PuncturedPerson.Beside(workup.clinical().bedside(), fluid));
  }

  /** How the fluid was drawn, and what of it somebody may have to be told at once. */
  public static PuncturedPerson.Draw draw(Panel panel) {
    return new PuncturedPerson.Draw(
        panel.csf().at(),
        panel.csf().volumeMl(),
        value(panel, Analyte.GLUCOSE),
        value(panel, Analyte.LEUKOCYTES));
  }

  private static PuncturedPerson.Kidney kidney(Person.Body body) {
    return new PuncturedPerson.Kidney(
        body.weightKg(),
        body.creatinine().stream().mapToDouble(Person.Creatinine::micromolPerL).findFirst(),
        body.creatinine().flatMap(Person.Creatinine::at));
  }

  private static Optional<Interval> value(Panel panel, Analyte analyte) {
    return panel.find(Sample.csf(analyte)).map(m -> m.value());
  }
}
