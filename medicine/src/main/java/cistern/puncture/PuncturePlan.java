package cistern.puncture;

import cistern.puncture.aftercare.AfterCare;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.Clearance;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.puncture.decision.Contraindication;
import cistern.puncture.decision.PunctureVerdict;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheAssessment;
import cistern.puncture.headache.HeadacheRisk;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.readiness.Guidance;
import cistern.puncture.readiness.OpeningPressure;
import cistern.puncture.readiness.TriggerAnswer;
import cistern.puncture.specimen.CriticalValue;
import cistern.puncture.specimen.Outstanding;
import cistern.puncture.specimen.TubePlan;
import cistern.urgent.Urgency;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The plan for one puncture and what follows from it.
 *
 * @param procedure what was given
 * @param subject whose it is
 * @param effects whether the result could change anything, one an edition
 * @param decision whether to go on to it
 * @param bleeding clotting, antithrombotics, and whether they may be interrupted at all
 * @param readiness what to look at before
 * @param technique how to do it
 * @param tubes what to send
 * @param afterwards what follows
 */
public record PuncturePlan(
    Procedure procedure,
    PuncturedPerson subject,
    List<ResultEffect> effects,
    Decision decision,
    Bleeding bleeding,
    Ready readiness,
    Technique technique,
    TubePlan tubes,
    Afterwards afterwards) {

  /** Copies the list. */
  public PuncturePlan {
    effects = List.copyOf(effects);
  }

  /** Whether every edition says that the result would change nothing. */
  public boolean isWithoutEffect() {
    return !effects.isEmpty()
        && effects.stream().allMatch(e -> e.effect() == ResultEffect.Effect.NO_EFFECT);
  }

  /** Whether the puncture has been done, so that what was to look at before no longer leads. */
  public boolean isDone() {
    return subject.draw().at().isPresent()
        || !procedure.done().equals(Done.UNKNOWN)
        || procedure.after().headache().isPresent();
  }

  /** Everything urgent about the puncture and its fluid, soonest first. */
  public List<Urgency> urgent() {
    return Stream.concat(
            afterwards.care().urgent().stream(), subject.beside().fluid().all().stream())
        .sorted(Comparator.comparing(Urgency::tier))
        .toList();
  }

  /**
   * Whether to go on to the puncture.
   *
   * @param verdict what to do
   * @param contraindications by weight
   */
  public record Decision(PunctureVerdict verdict, List<Contraindication> contraindications) {
    /** Copies the list. */
    public Decision {
      contraindications = List.copyOf(contraindications);
    }
  }

  /**
   * Bleeding.
   *
   * @param drugs every name that was typed
   * @param clearance of creatinine
   * @param thresholds every clotting value against every guideline
   * @param antithrombotics every drug against every guideline
   */
  public record Bleeding(
      TakenDrugs drugs,
      Clearance clearance,
      List<ThresholdAnswer> thresholds,
      List<AntithromboticPlan> antithrombotics) {
    /** Copies the lists. */
    public Bleeding {
      thresholds = List.copyOf(thresholds);
      antithrombotics = List.copyOf(antithrombotics);
    }
  }

  /**
   * What to look at before.
   *
   * @param precautions what is present, open and checked
   * @param triggers every sign of raised pressure against every guideline
   * @param consent the topics of a consent talk
   */
  public record Ready(
      List<Precaution> precautions, List<TriggerAnswer> triggers, List<String> consent) {
    /** Copies the lists. */
    public Ready {
      precautions = List.copyOf(precautions);
      triggers = List.copyOf(triggers);
      consent = List.copyOf(consent);
    }

    /** The precautions of a state. */
    public List<Precaution> with(Precaution.State state) {
      return precautions.stream().filter(p -> p.state() == state).toList();
    }
  }

  /**
   * How to do it.
   *
   * @param guidance landmarks or imaging
   * @param advice needle and technique with effect sizes
   * @param headacheRisk as a band
   */
  public record Technique(
      Guidance guidance, List<Guidance.Advice> advice, HeadacheRisk headacheRisk) {
    /** Copies the list. */
    public Technique {
      advice = List.copyOf(advice);
    }
  }

  /**
   * What follows.
   *
   * @param pressure the opening pressure, if measured
   * @param care what must be said first, and what follows
   * @param headache the questions to ask and what they amount to
   * @param outstanding what is due
   * @param critical what somebody must be told of
   */
  public record Afterwards(
      Optional<OpeningPressure> pressure,
      AfterCare care,
      HeadacheAssessment headache,
      List<Outstanding> outstanding,
      List<CriticalValue> critical) {
    /** Copies the lists. */
    public Afterwards {
      outstanding = List.copyOf(outstanding);
      critical = List.copyOf(critical);
    }
  }
}
