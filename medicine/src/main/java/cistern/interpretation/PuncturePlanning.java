package cistern.interpretation;

import cistern.criteria.Item;
import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.panel.Circumstance;
import cistern.panel.Panel;
import cistern.puncture.PunctureEffect;
import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlans;
import cistern.puncture.procedure.Subject;
import java.util.List;
import java.util.Optional;

/** Composes the plan for a puncture from a work-up and its interpretation. */
public final class PuncturePlanning {

  private final PuncturePlans plans;

  private PuncturePlanning(Facts facts) {
    plans = PuncturePlans.of(facts);
  }

  /** Plans under some facts. */
  public static PuncturePlanning of(Facts facts) {
    return new PuncturePlanning(facts);
  }

  /** The plan for the puncture of a work-up. */
  public PuncturePlan interpret(Interpretation interpretation) {
    Workup workup = interpretation.workup();
    return plans.of(workup.procedure(), subject(workup), effects(interpretation));
  }

  private static List<PunctureEffect> effects(Interpretation interpretation) {
    return interpretation.weighed().puncture().effects().entrySet().stream()
        .map(e -> new PunctureEffect(e.getKey(), effect(e.getValue())))
        .toList();
  }

  private static PunctureEffect.Effect effect(cistern.criteria.PunctureEffect effect) {
    return switch (effect) {
      case DECISIVE -> PunctureEffect.Effect.DECISIVE;
      case NARROWS -> PunctureEffect.Effect.NARROWS;
      case NO_EFFECT -> PunctureEffect.Effect.NO_EFFECT;
    };
  }

  private static Subject subject(Workup workup) {
    Panel panel = workup.panel();
    return new Subject(
        panel.person().ageYears(),
        panel.person().sex(),
        panel.answer(Circumstance.PREGNANCY),
        workup.clinical().evidence().answer(Item.HEADACHE_DISORDER),
        new Subject.Draw(
            panel.csf().at(),
            panel.csf().volumeMl(),
            value(panel, Analyte.GLUCOSE),
            value(panel, Analyte.LEUKOCYTES)));
  }

  private static Optional<Interval> value(Panel panel, Analyte analyte) {
    return panel.find(Sample.csf(analyte)).map(m -> m.value());
  }
}
