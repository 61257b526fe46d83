package cistern.puncture;

import cistern.fact.Facts;
import cistern.puncture.aftercare.AfterCare;
import cistern.puncture.aftercare.AfterCares;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.Antithrombotics;
import cistern.puncture.bleeding.BleedingPrecautions;
import cistern.puncture.bleeding.Clearance;
import cistern.puncture.bleeding.Clearances;
import cistern.puncture.bleeding.DrugCheck;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.bleeding.Thresholds;
import cistern.puncture.bleeding.ThrombosisFlags;
import cistern.puncture.decision.BleedingStandings;
import cistern.puncture.decision.Contraindication;
import cistern.puncture.decision.Contraindications;
import cistern.puncture.decision.PunctureVerdict;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheAssessments;
import cistern.puncture.headache.HeadacheRisks;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.readiness.GuidanceRules;
import cistern.puncture.readiness.PressureRanges;
import cistern.puncture.readiness.Readiness;
import cistern.puncture.specimen.Results;
import cistern.puncture.specimen.TubePlans;
import cistern.urgent.Urgency;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Plans punctures under one set of facts. */
public final class PuncturePlans {

  private final Facts facts;
  private final DrugCheck drugs;
  private final BleedingStandings standings;
  private final AfterCares afterCares;
  private final Clearances clearances;
  private final Thresholds thresholds;

  private PuncturePlans(Facts facts) {
    this.facts = facts;
    drugs = DrugCheck.of(facts);
    standings = BleedingStandings.of(facts);
    afterCares = AfterCares.of(facts);
    clearances = Clearances.of(facts);
    thresholds = Thresholds.of(facts);
  }

  /** Plans under some facts. */
  public static PuncturePlans of(Facts facts) {
    return new PuncturePlans(facts);
  }

  /** The plan for one procedure. */
  public PuncturePlan of(Procedure procedure, PuncturedPerson person, List<ResultEffect> effects) {
    Before before = procedure.before();
    PuncturePlan.Bleeding bleeding = bleeding(before, person);
    GuidanceRules guidance = GuidanceRules.of(facts);
    return new PuncturePlan(
        procedure,
        person,
        effects,
        decision(before, person, bleeding),
        bleeding,
        ready(before, person, bleeding),
        new PuncturePlan.Technique(
            guidance.check(before, person),
            guidance.technique(),
            HeadacheRisks.of(facts).check(before, person)),
        TubePlans.of(facts).check(before.order(), person),
        afterwards(procedure, person, bleeding));
  }

  /** Emergencies and red flags after a puncture, for who reads the fluid. */
  public AfterCare afterCare(Procedure procedure, PuncturedPerson person) {
    return afterCare(procedure, person, bleeding(procedure.before(), person));
  }

  /** The emergencies and red flags alone. */
  public List<Urgency> urgentAfterwards(Procedure procedure, PuncturedPerson person) {
    return procedure.after().headache().isEmpty()
        ? List.of()
        : afterCares.urgent(
            procedure, person, drugs.check(procedure.before().anticoagulation(), person));
  }

  private PuncturePlan.Bleeding bleeding(Before before, PuncturedPerson person) {
    var taken = drugs.check(before.anticoagulation(), person);
    var clearance = clearances.check(before, person);
    return new PuncturePlan.Bleeding(
        taken,
        clearance,
        thresholds.check(before.anticoagulation().coagulation()),
        intervals(taken, before, clearance));
  }

  /** The table of intervals is read only where a drug was recognised. */
  private List<AntithromboticPlan> intervals(TakenDrugs taken, Before before, Clearance clearance) {
    return taken.antithrombotics().isEmpty()
        ? List.of()
        : Antithrombotics.of(facts).check(taken, before, clearance);
  }

  private PuncturePlan.Decision decision(
      Before before, PuncturedPerson person, PuncturePlan.Bleeding bleeding) {
    List<Precaution> thrombosis = ThrombosisFlags.of(facts).check(before);
    List<Contraindication> all =
        Contraindications.of(facts)
            .check(
                before,
                person,
                standings.clotting(before, bleeding.thresholds(), bleeding.drugs()),
                BleedingStandings.antithrombotics(
                    bleeding.drugs(), bleeding.antithrombotics(), thrombosis));
    return new PuncturePlan.Decision(
        PunctureVerdict.of(
            all, bleeding.antithrombotics(), bleeding.drugs().askedAbout().isEmpty()),
        all);
  }

  private PuncturePlan.Ready ready(
      Before before, PuncturedPerson person, PuncturePlan.Bleeding bleeding) {
    Readiness readiness = Readiness.of(facts);
    List<Precaution> all = new ArrayList<>(readiness.check(before));
    all.addAll(
        BleedingPrecautions.of(facts)
            .check(before, bleeding.thresholds(), bleeding.antithrombotics()));
    all.addAll(readiness.arrangements(before, person));
    return new PuncturePlan.Ready(all, readiness.triggers(before), words("consent."));
  }

  private List<String> words(String start) {
    return facts.keys(start).stream().map(facts::word).toList();
  }

  private PuncturePlan.Afterwards afterwards(
      Procedure procedure, PuncturedPerson person, PuncturePlan.Bleeding bleeding) {
    Results results = Results.of(facts);
    AfterCare care = afterCare(procedure, person, bleeding);
    return new PuncturePlan.Afterwards(
        PressureRanges.of(facts).check(procedure.done(), person),
        care,
        HeadacheAssessments.of(facts).check(procedure.after(), person.draw().at(), care.holding()),
        results.outstanding(procedure.after()),
        results.critical(procedure.after(), person.draw()));
  }

  /** Every interval is counted again up to the time at which the person is seen. */
  private AfterCare afterCare(
      Procedure procedure, PuncturedPerson person, PuncturePlan.Bleeding bleeding) {
    Before before = procedure.before();
    Optional<OffsetDateTime> now = procedure.after().asOf().or(() -> before.times().plannedAt());
    Before today =
        new Before(
            before.answers(),
            new Before.Times(now, before.times().imagedAt()),
            before.comaScore(),
            before.anticoagulation(),
            before.body(),
            before.needle(),
            before.order());
    List<AntithromboticPlan> again = intervals(bleeding.drugs(), today, bleeding.clearance());
    return afterCares.check(
        procedure,
        person,
        bleeding.drugs(),
        standings.clotting(today, bleeding.thresholds(), bleeding.drugs()),
        again);
  }
}
