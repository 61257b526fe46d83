package cistern.puncture.decision;

import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.ClottingTest;
import cistern.puncture.bleeding.HoldVerdict;
import cistern.puncture.bleeding.TakenDrugs;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.puncture.decision.Contraindication.Go;
import cistern.puncture.decision.Contraindications.Standing;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.Before;
import cistern.puncture.procedure.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What clotting and antithrombotics ask for before a puncture. */
public final class BleedingStandings {

  private static final String THROMBOLYTIC = "thrombolytic";
  private static final String LOCAL = "local";

  private final Facts facts;

  private BleedingStandings(Facts facts) {
    this.facts = facts;
  }

  /** The limits under some facts. */
  public static BleedingStandings of(Facts facts) {
    return new BleedingStandings(facts);
  }

  /**
   * Platelets, INR and aPTT against the local limits, else against the published ones; a bleeding
   * disorder; a recent thrombolysis.
   */
  public Standing clotting(Before before, List<ThresholdAnswer> thresholds, TakenDrugs drugs) {
    List<Found> found = new ArrayList<>();
    for (ClottingTest test : List.of(ClottingTest.values())) {
      List<ThresholdAnswer> own = thresholds.stream().filter(t -> t.test() == test).toList();
      found.add(test(test, test.value(before.anticoagulation().coagulation()), own));
    }
    found.add(
        new Found(
            before.answers().answer(Question.BLEEDING_DISORDER),
            Go.WAIT,
            Question.BLEEDING_DISORDER.term()));
    found.add(thrombolysis(before, drugs));
    return together(found);
  }

  private record Found(Answer present, Go go, String text) {
    static Found none() {
      return new Found(Answer.NO, Go.GO, "");
    }
  }

  private static Standing together(List<Found> found) {
    Answer present =
        cistern.puncture.procedure.ThreeValued.any(
            found.stream().map(Found::present).toArray(Answer[]::new));
    Go go = found.stream().filter(f -> f.present().isYes()).map(Found::go).reduce(Go.ASK, Go::and);
    List<String> reasons =
        found.stream()
            .filter(f -> f.present() == present && f.present() != Answer.NO)
            .map(Found::text)
            .toList();
    return new Standing(present, go, reasons);
  }

  /** An aPTT is looked at when it was measured; platelets and INR are asked for. */
  private Found test(ClottingTest test, OptionalDouble value, List<ThresholdAnswer> limits) {
    if (value.isEmpty()) {
      return test == ClottingTest.APTT_RATIO
          ? Found.none()
          : new Found(Answer.UNKNOWN, Go.ASK, test.term());
    }
    String text = test.term() + " " + cistern.finding.Printed.significant(value.getAsDouble());
    List<ThresholdAnswer> local =
        limits.stream().filter(t -> t.guideline().code().equals(LOCAL)).toList();
    if (test == ClottingTest.PLATELETS
        && value.getAsDouble() < number("platelets.absolute-below")) {
      return new Found(Answer.YES, Go.DO_NOT, text);
    }
    if (!local.isEmpty()) {
      return new Found(isClear(local) ? Answer.NO : Answer.YES, Go.WAIT, text);
    }
    if (test == ClottingTest.PLATELETS) {
      boolean isLow = value.getAsDouble() <= number("platelets.relative-up-to");
      return new Found(isLow ? Answer.YES : Answer.NO, Go.WAIT, text);
    }
    boolean isNobodyClear =
        limits.stream().noneMatch(t -> t.standing() == ThresholdAnswer.Standing.CLEAR);
    return new Found(
        isClear(limits) ? Answer.NO : Answer.YES, isNobodyClear ? Go.WAIT : Go.ASK, text);
  }

  private static boolean isClear(List<ThresholdAnswer> limits) {
    return limits.stream().allMatch(t -> t.standing() == ThresholdAnswer.Standing.CLEAR);
  }

  private Found thrombolysis(Before before, TakenDrugs drugs) {
    double limit = number("thrombolysis.hours");
    return drugs.antithrombotics().stream()
        .filter(t -> t.drug().entry().orElseThrow().drugClass().equals(THROMBOLYTIC))
        .map(t -> t.taken().hoursBefore(before.times().plannedAt()))
        .filter(hours -> hours.isEmpty() || hours.getAsDouble() < limit)
        .map(
            hours ->
                new Found(
                    hours.isPresent() ? Answer.YES : Answer.UNKNOWN, Go.WAIT, "thrombolysis, when"))
        .findFirst()
        .orElseGet(Found::none);
  }

  private double number(String key) {
    return facts.number("contraindication." + key);
  }

  /** Intervals that have not passed, and everything that must be asked of the prescriber. */
  public static Standing antithrombotics(
      TakenDrugs drugs, List<AntithromboticPlan> plans, List<Precaution> thrombosis) {
    if (!drugs.isAsked() && drugs.all().isEmpty()) {
      return new Standing(Answer.UNKNOWN, Go.ASK, List.of("is an antithrombotic taken"));
    }
    List<String> reasons = new ArrayList<>();
    Go go = Go.GO;
    for (AntithromboticPlan plan : plans) {
      HoldVerdict verdict = plan.together();
      if (verdict != HoldVerdict.PASSED) {
        go = go.and(verdict == HoldVerdict.NOT_PASSED ? Go.WAIT : Go.ASK);
        reasons.add(
            plan.taken().name()
                + (verdict == HoldVerdict.NOT_PASSED ? ": interval not passed" : ": ask"));
      }
    }
    for (TakenDrugs.Taken asked : drugs.askedAbout()) {
      go = go.and(Go.ASK);
      reasons.add(
          asked.drug().typed() + (asked.drug().entry().isEmpty() ? ": not a known name" : ": ask"));
    }
    for (Precaution reason : thrombosis) {
      if (reason.state() == Precaution.State.PRESENT && !plans.isEmpty()) {
        go = go.and(Go.ASK);
        reasons.add("not to be interrupted without the prescriber");
      }
    }
    boolean isOpen = !drugs.isAsked();
    return new Standing(
        go != Go.GO ? Answer.YES : isOpen ? Answer.UNKNOWN : Answer.NO,
        go,
        List.copyOf(new java.util.LinkedHashSet<>(reasons)));
  }
}
