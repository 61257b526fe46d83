package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlan.Afterwards;
import cistern.puncture.headache.Definition;
import cistern.puncture.headache.HeadacheAssessment;
import cistern.puncture.headache.RedFlagAnswer;
import cistern.puncture.headache.Step;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.RedFlag;
import cistern.puncture.readiness.OpeningPressure;
import cistern.puncture.specimen.CriticalValue;
import cistern.puncture.specimen.Outstanding;
import cistern.report.json.JsonLines;
import java.time.OffsetDateTime;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** Pressure, headache, outstanding results and critical values. */
final class AfterwardsJson {

  private AfterwardsJson() {}

  static void write(JsonGenerator json, PuncturePlan plan) {
    Afterwards afterwards = plan.afterwards();
    json.writeName("openingPressure");
    if (afterwards.pressure().isPresent()) {
      pressure(json, afterwards.pressure().get());
    } else {
      json.writeNull();
    }
    headache(json, afterwards.headache());
    time(json, "asOf", plan.procedure().after().asOf());
    json.writeName("outstanding");
    json.writeStartArray();
    afterwards.outstanding().forEach(result -> outstanding(json, result));
    json.writeEndArray();
    json.writeName("critical");
    json.writeStartArray();
    afterwards.critical().forEach(value -> critical(json, value));
    json.writeEndArray();
  }

  private static void pressure(JsonGenerator json, OpeningPressure pressure) {
    json.writeStartObject();
    json.writeNumberProperty("cm[H2O]", pressure.cmWater());
    json.writeNumberProperty("mm[Hg]", pressure.mmMercury());
    json.writeNumberProperty("kPa", pressure.kiloPascal());
    json.writeName("ranges");
    json.writeStartArray();
    for (OpeningPressure.RangeAnswer range : pressure.ranges()) {
      json.writeStartObject();
      json.writeStringProperty("code", range.code());
      PlanJson.pair(json, "range", range.lower(), range.upper());
      json.writeStringProperty("verdict", range.verdict().word());
      JsonLines.grounds(json, range.grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
    JsonLines.strings(json, "notes", pressure.notes());
    json.writeEndObject();
  }

  private static void headache(JsonGenerator json, HeadacheAssessment headache) {
    json.writeName("headache");
    json.writeStartObject();
    json.writeStringProperty("conclusion", headache.conclusion());
    json.writeName("redFlags");
    json.writeStartArray();
    headache.redFlags().forEach(flags -> flags(json, flags));
    json.writeEndArray();
    JsonLines.strings(json, "open", headache.open().stream().map(RedFlag::field).toList());
    json.writeName("definitions");
    json.writeStartArray();
    for (Definition definition : headache.definitions()) {
      json.writeStartObject();
      json.writeStringProperty("name", definition.name());
      json.writeStringProperty("verdict", definition.verdict());
      json.writeStringProperty("reason", definition.reason());
      JsonLines.grounds(json, definition.grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeName("steps");
    json.writeStartArray();
    for (Step step : headache.steps()) {
      json.writeStartObject();
      json.writeStringProperty("code", step.code());
      json.writeStringProperty("text", step.text());
      json.writeStringProperty("window", step.window());
      JsonLines.grounds(json, step.grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeStringProperty("other", headache.other());
    json.writeEndObject();
  }

  private static void flags(JsonGenerator json, RedFlagAnswer flags) {
    json.writeStartObject();
    json.writeStringProperty("danger", flags.danger().code());
    json.writeStringProperty("thinkOf", flags.thinkOf());
    json.writeStringProperty("urgency", flags.urgency());
    json.writeBooleanProperty("present", flags.isPresent());
    json.writeName("questions");
    json.writeStartArray();
    for (RedFlagAnswer.Asked asked : flags.asked()) {
      json.writeStartObject();
      json.writeStringProperty("field", asked.flag().field());
      json.writeStringProperty("question", asked.flag().question());
      json.writeStringProperty("answer", asked.answer().word());
      json.writeEndObject();
    }
    json.writeEndArray();
    JsonLines.grounds(json, flags.grounds());
    json.writeEndObject();
  }

  private static void outstanding(JsonGenerator json, Outstanding result) {
    json.writeStartObject();
    json.writeStringProperty("test", result.test().code());
    json.writeStringProperty("state", result.state().word());
    time(json, "dueAt", result.dueAt());
    json.writeName("told");
    json.writeStartArray();
    result.told().forEach(told -> told(json, told, ""));
    json.writeEndArray();
    JsonLines.grounds(json, result.grounds());
    json.writeEndObject();
  }

  private static void critical(JsonGenerator json, CriticalValue value) {
    json.writeStartObject();
    json.writeStringProperty("test", value.test().code());
    json.writeStringProperty("text", value.text());
    json.writeBooleanProperty("untold", value.isUntold());
    json.writeName("told");
    json.writeStartArray();
    value.told().forEach(telling -> told(json, telling.told(), telling.delay()));
    json.writeEndArray();
    JsonLines.grounds(json, value.grounds());
    json.writeEndObject();
  }

  private static void told(JsonGenerator json, Told told, String delay) {
    json.writeStartObject();
    json.writeStringProperty("who", told.who());
    time(json, "at", told.at());
    json.writeStringProperty("delay", delay);
    json.writeEndObject();
  }

  private static void time(JsonGenerator json, String name, Optional<OffsetDateTime> time) {
    JsonLines.orNull(json, name, time.map(OffsetDateTime::toString));
  }
}
