package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.Hours;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.puncture.guideline.Guideline;
import cistern.puncture.readiness.TriggerAnswer;
import cistern.report.json.JsonObject;
import java.util.Optional;

/** Antithrombotics, clotting and signs of raised pressure, guideline beside guideline. */
final class BleedingJson {

  private BleedingJson() {}

  static void write(JsonObject json, PuncturePlan plan) {
    json.list("antithrombotics", plan.bleeding().antithrombotics(), BleedingJson::drug);
    json.list("coagulation", plan.bleeding().thresholds(), BleedingJson::threshold);
    json.list("imaging", plan.readiness().triggers(), BleedingJson::trigger);
  }

  private static void drug(JsonObject json, AntithromboticPlan drug) {
    json.with("drug", drug.taken().name());
    json.with("doseClass", drug.taken().doseClass().code());
    json.with("hoursSinceLastDose", drug.hours());
    json.with("guidelinesDisagree", drug.disagree());
    json.list("guidelines", drug.answers(), BleedingJson::answer);
  }

  private static void answer(JsonObject json, GuidelineAnswer answer) {
    guideline(json, answer.guideline());
    json.with("scope", answer.guideline().scope());
    hours(json, "holdHours", answer.hold());
    hours(json, "restartHours", answer.restart());
    hours(json, "restartHoursAfterTraumaticTap", answer.restartTraumatic());
    json.strings("conditions", answer.conditions());
    json.strings("rows", answer.rows());
    json.with("answer", answer.verdict().word());
    json.with("reason", answer.reason());
    json.grounds(answer.grounds());
  }

  private static void hours(JsonObject json, String name, Optional<Hours> hours) {
    if (hours.isPresent()) {
      json.numbers(name, hours.get().least(), hours.get().most());
    } else {
      json.nothing(name);
    }
  }

  private static void guideline(JsonObject json, Guideline guideline) {
    json.with("name", guideline.name());
    json.with("year", guideline.year());
  }

  private static void threshold(JsonObject json, ThresholdAnswer threshold) {
    json.with("test", threshold.test().code());
    guideline(json, threshold.guideline());
    json.with("answer", threshold.standing().word());
    json.with("text", threshold.text());
    json.grounds(threshold.grounds());
  }

  private static void trigger(JsonObject json, TriggerAnswer trigger) {
    json.with("sign", trigger.trigger().code());
    guideline(json, trigger.guideline());
    json.with("answer", trigger.verdict().word());
    json.with("text", trigger.text());
    json.grounds(trigger.grounds());
  }
}
