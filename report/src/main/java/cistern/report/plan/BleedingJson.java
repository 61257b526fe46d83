package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.Hours;
import cistern.puncture.bleeding.ThresholdAnswer;
import cistern.puncture.guideline.Voice;
import cistern.puncture.readiness.TriggerAnswer;
import cistern.report.json.JsonLines;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** Antithrombotics, clotting and signs of raised pressure, guideline beside guideline. */
final class BleedingJson {

  private BleedingJson() {}

  static void write(JsonGenerator json, PuncturePlan plan) {
    json.writeName("antithrombotics");
    json.writeStartArray();
    plan.bleeding().antithrombotics().forEach(drug -> drug(json, drug));
    json.writeEndArray();
    json.writeName("coagulation");
    json.writeStartArray();
    plan.bleeding().thresholds().forEach(threshold -> threshold(json, threshold));
    json.writeEndArray();
    json.writeName("imaging");
    json.writeStartArray();
    plan.readiness().triggers().forEach(trigger -> trigger(json, trigger));
    json.writeEndArray();
  }

  private static void drug(JsonGenerator json, AntithromboticPlan drug) {
    json.writeStartObject();
    json.writeStringProperty("drug", drug.taken().name());
    json.writeStringProperty("doseClass", drug.taken().doseClass().code());
    JsonLines.orNull(json, "hoursSinceLastDose", drug.hours());
    json.writeBooleanProperty("guidelinesDisagree", drug.disagree());
    json.writeName("guidelines");
    json.writeStartArray();
    drug.answers().forEach(answer -> answer(json, answer));
    json.writeEndArray();
    json.writeEndObject();
  }

  private static void answer(JsonGenerator json, GuidelineAnswer answer) {
    json.writeStartObject();
    voice(json, answer.voice());
    json.writeStringProperty("scope", answer.voice().scope());
    hours(json, "holdHours", answer.hold());
    hours(json, "restartHours", answer.restart());
    hours(json, "restartHoursAfterTraumaticTap", answer.restartTraumatic());
    JsonLines.strings(json, "conditions", answer.conditions());
    json.writeStringProperty("answer", answer.reply().word());
    json.writeStringProperty("reason", answer.reason());
    JsonLines.grounds(json, answer.grounds());
    json.writeEndObject();
  }

  private static void hours(JsonGenerator json, String name, Optional<Hours> hours) {
    if (hours.isPresent()) {
      PlanJson.pair(json, name, hours.get().least(), hours.get().most());
    } else {
      json.writeNullProperty(name);
    }
  }

  private static void voice(JsonGenerator json, Voice voice) {
    json.writeStringProperty("name", voice.name());
    JsonLines.orNull(json, "year", voice.year());
  }

  private static void threshold(JsonGenerator json, ThresholdAnswer threshold) {
    json.writeStartObject();
    json.writeStringProperty("test", threshold.test().code());
    voice(json, threshold.voice());
    json.writeStringProperty("answer", threshold.standing().word());
    json.writeStringProperty("text", threshold.text());
    JsonLines.grounds(json, threshold.grounds());
    json.writeEndObject();
  }

  private static void trigger(JsonGenerator json, TriggerAnswer trigger) {
    json.writeStartObject();
    json.writeStringProperty("sign", trigger.trigger().code());
    voice(json, trigger.voice());
    json.writeStringProperty("answer", trigger.verdict().word());
    json.writeStringProperty("text", trigger.text());
    JsonLines.grounds(json, trigger.grounds());
    json.writeEndObject();
  }
}
