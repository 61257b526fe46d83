package cistern.puncture.bleeding;

import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.puncture.bleeding.ThresholdAnswer.Standing;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.Before;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What bleeding and clotting add to the list of precautions. */
public final class BleedingPrecautions {

  private static final String IN_USE = "antithrombotic";
  private static final String UNKNOWN = "coagulation-unknown";

  private final Facts facts;

  private BleedingPrecautions(Facts facts) {
    this.facts = facts;
  }

  /** The precautions under some facts. */
  public static BleedingPrecautions of(Facts facts) {
    return new BleedingPrecautions(facts);
  }

  /** Clotting values, antithrombotics, and reasons not to interrupt them. */
  public List<Precaution> check(
      Before before, List<ThresholdAnswer> thresholds, List<AntithromboticPlan> drugs) {
    List<Precaution> all = new ArrayList<>();
    Arrays.stream(ClottingTest.values())
        .map(test -> clotting(test, before, thresholds))
        .forEach(all::add);
    all.add(inUse(before));
    if (drugs.size() > 1) {
      all.add(Precaution.present(facts, "antithrombotics-two", ""));
    }
    boolean isLater =
        before.anticoagulation().inUse().stream()
            .map(taken -> taken.hoursBefore(before.times().plannedAt()))
            .anyMatch(hours -> hours.isPresent() && hours.getAsDouble() < 0);
    if (isLater) {
      all.add(Precaution.present(facts, "dose-after-puncture", ""));
    }
    drugs.stream().filter(AntithromboticPlan::disagree).map(this::conflict).forEach(all::add);
    all.addAll(ThrombosisFlags.of(facts).check(before));
    return all;
  }

  private Precaution clotting(ClottingTest test, Before before, List<ThresholdAnswer> thresholds) {
    List<ThresholdAnswer> own = thresholds.stream().filter(t -> t.test() == test).toList();
    OptionalDouble value = test.value(before.anticoagulation().coagulation());
    if (value.isEmpty()) {
      return new Precaution(
          test.code(),
          Precaution.State.OPEN,
          test.term() + ": " + facts.word("precaution." + UNKNOWN),
          facts.grounds("precaution." + UNKNOWN));
    }
    Grounds grounds =
        own.stream().map(ThresholdAnswer::grounds).reduce(Grounds::and).orElse(Grounds.MEASURED);
    String each =
        own.stream()
            .map(t -> t.guideline().title() + ": " + t.text())
            .collect(Collectors.joining("; "));
    boolean isClear = own.stream().allMatch(t -> t.standing() == Standing.CLEAR);
    String measured = test.term() + " " + Printed.significant(value.getAsDouble()) + unit(test);
    return new Precaution(
        test.code(),
        isClear ? Precaution.State.CHECKED : Precaution.State.PRESENT,
        measured + date(before) + ". " + (isClear ? "No guideline here objects" : each) + ".",
        grounds);
  }

  private static String unit(ClottingTest test) {
    return test.unit().isEmpty() ? "" : " × " + test.unit();
  }

  private static String date(Before before) {
    return before
        .anticoagulation()
        .coagulation()
        .at()
        .map(
            at -> ", taken " + at.toLocalDate() + "; whether that is recent enough is local policy")
        .orElse(", date not recorded");
  }

  private Precaution inUse(Before before) {
    if (before.anticoagulation().antithrombotics().isEmpty()) {
      return Precaution.open(facts, IN_USE, "Ask: is an antithrombotic taken, which, when last?");
    }
    List<Antithrombotic> taken = before.anticoagulation().inUse();
    if (taken.isEmpty()) {
      return Precaution.checked(facts, IN_USE, "No antithrombotic is recorded.");
    }
    String names = taken.stream().map(Antithrombotic::name).collect(Collectors.joining(", "));
    return Precaution.present(facts, IN_USE, names + ". ");
  }

  private Precaution conflict(AntithromboticPlan plan) {
    String each =
        plan.answers().stream()
            .filter(a -> a.verdict() != HoldVerdict.ASK)
            .map(a -> a.guideline().title() + " " + a.verdict().word())
            .collect(Collectors.joining("; "));
    Grounds grounds =
        plan.answers().stream()
            .filter(a -> a.verdict() != HoldVerdict.ASK)
            .map(GuidelineAnswer::grounds)
            .reduce(Grounds::and)
            .orElse(Grounds.MEASURED);
    return new Precaution(
        "guidelines-disagree",
        Precaution.State.PRESENT,
        plan.taken().name() + ": the guidelines do not agree (" + each + "). Ask the prescriber.",
        grounds);
  }
}
