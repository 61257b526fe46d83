package cistern.puncture;

import cistern.fact.Fact;
import cistern.fact.Facts;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.Antithrombotics;
import cistern.puncture.bleeding.BleedingPrecautions;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.puncture.bleeding.Thresholds;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheAssessments;
import cistern.puncture.headache.HeadacheRisks;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.Subject;
import cistern.puncture.readiness.GuidanceRules;
import cistern.puncture.readiness.PressureRanges;
import cistern.puncture.readiness.Readiness;
import cistern.puncture.specimen.Results;
import cistern.puncture.specimen.TubePlans;
import java.util.ArrayList;
import java.util.List;

/** Plans punctures under one set of facts. */
public final class PuncturePlans {

  private final Facts facts;

  private PuncturePlans(Facts facts) {
    this.facts = facts;
  }

  /** Plans under some facts. */
  public static PuncturePlans of(Facts facts) {
    return new PuncturePlans(facts);
  }

  /** The plan for one procedure. */
  public PuncturePlan of(Procedure procedure, Subject subject, List<PunctureEffect> effects) {
    Before before = procedure.before();
    PuncturePlan.Bleeding bleeding =
        new PuncturePlan.Bleeding(
            Thresholds.of(facts).check(before.anticoagulation().coagulation()),
            Antithrombotics.of(facts).check(before));
    GuidanceRules guidance = GuidanceRules.of(facts);
    return new PuncturePlan(
        procedure,
        subject,
        effects,
        bleeding,
        ready(before, subject, bleeding),
        new PuncturePlan.Technique(
            guidance.check(before, subject),
            guidance.technique(),
            HeadacheRisks.of(facts).check(before, subject)),
        TubePlans.of(facts).check(before.order(), subject),
        afterwards(procedure, subject));
  }

  private PuncturePlan.Ready ready(Before before, Subject subject, PuncturePlan.Bleeding bleeding) {
    Readiness readiness = Readiness.of(facts);
    List<ThresholdAnswer> thresholds = bleeding.thresholds();
    List<AntithromboticPlan> drugs = bleeding.antithrombotics();
    List<Precaution> all = new ArrayList<>(readiness.check(before));
    all.addAll(BleedingPrecautions.of(facts).check(before, thresholds, drugs));
    all.addAll(readiness.arrangements(before, subject));
    return new PuncturePlan.Ready(all, readiness.triggers(before), words("consent."));
  }

  private List<String> words(String start) {
    return facts.all().stream()
        .map(Fact::key)
        .filter(key -> key.startsWith(start))
        .map(facts::word)
        .toList();
  }

  private PuncturePlan.Afterwards afterwards(Procedure procedure, Subject subject) {
    Results results = Results.of(facts);
    return new PuncturePlan.Afterwards(
        PressureRanges.of(facts).check(procedure.done(), subject),
        HeadacheAssessments.of(facts).check(procedure.after(), subject.draw().at()),
        results.outstanding(procedure.after()),
        results.critical(procedure.after(), subject));
  }
}
