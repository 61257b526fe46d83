package cistern.report.plan;

import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlan.Afterwards;
import cistern.puncture.aftercare.AfterCare;
import cistern.puncture.aftercare.AfterCare.Reason;
import cistern.puncture.headache.HeadacheAssessment;
import cistern.puncture.headache.RedFlagAnswer;
import cistern.puncture.procedure.After.Told;
import cistern.puncture.procedure.WarningSign;
import cistern.puncture.readiness.OpeningPressure;
import cistern.puncture.specimen.CriticalValue;
import cistern.puncture.specimen.Outstanding;
import cistern.report.json.JsonObject;
import java.time.OffsetDateTime;
import java.util.Optional;

/** Pressure, headache, outstanding results and critical values. */
final class AfterwardsJson {

  private AfterwardsJson() {}

  static void write(JsonObject json, PuncturePlan plan) {
    Afterwards afterwards = plan.afterwards();
    json.object("openingPressure", afterwards.pressure(), AfterwardsJson::pressure);
    json.object("after", item -> care(item, afterwards.care()));
    headache(json, plan);
    time(json, "asOf", plan.procedure().after().asOf());
    json.list("outstanding", afterwards.outstanding(), AfterwardsJson::outstanding);
    json.list("critical", afterwards.critical(), AfterwardsJson::critical);
  }

  private static void pressure(JsonObject json, OpeningPressure pressure) {
    json.with("cm[H2O]", pressure.cmWater());
    json.with("mm[Hg]", pressure.mmMercury());
    json.with("kPa", pressure.kiloPascal());
    json.list(
        "ranges",
        pressure.ranges(),
        (item, range) -> {
          item.with("code", range.code());
          json.numbers("range", range.lower(), range.upper());
          item.with("verdict", range.verdict().word());
          item.grounds(range.grounds());
        });
    json.strings("notes", pressure.notes());
  }

  /** What is urgent, whether a patch may be spoken of, what was studied and when to call. */
  private static void care(JsonObject json, AfterCare care) {
    json.list("urgent", care.urgent(), DecisionJson::urgency);
    json.object(
        "patch",
        item -> {
          item.with("information", care.patch().isHeld() ? "held" : "shown");
          item.strings("because", care.patch().because(), Reason::code);
          item.strings("open", care.patch().open());
        });
    json.list("ladder", care.ladder(), AfterwardsJson::step);
    json.list(
        "calls",
        care.calls(),
        (item, call) -> {
          item.with("code", call.code());
          item.with("text", call.text());
          item.numbers("days", call.fromDay(), call.toDay());
          time(item, "from", call.from());
          time(item, "to", call.to());
          item.grounds(call.grounds());
        });
  }

  private static void step(JsonObject json, AfterCare.LadderStep step) {
    json.with("code", step.code());
    json.with("text", step.text());
    json.with("check", step.check());
    json.grounds(step.grounds());
  }

  private static void headache(JsonObject json, PuncturePlan plan) {
    HeadacheAssessment headache = plan.afterwards().headache();
    json.object(
        "headache",
        item -> {
          item.with("conclusion", headache.conclusion());
          item.list("redFlags", headache.redFlags(), AfterwardsJson::flags);
          item.strings("open", headache.open(), WarningSign::field);
          item.list(
              "definitions",
              headache.definitions(),
              (one, definition) -> {
                one.with("name", definition.name());
                one.with("verdict", definition.verdict());
                one.with("reason", definition.reason());
                one.grounds(definition.grounds());
              });
          item.list("steps", plan.afterwards().care().ladder(), AfterwardsJson::step);
        });
  }

  private static void flags(JsonObject json, RedFlagAnswer flags) {
    json.with("danger", flags.danger().code());
    json.with("thinkOf", flags.thinkOf());
    json.with("urgency", flags.urgency());
    json.with("present", flags.isPresent());
    json.list(
        "questions",
        flags.asked(),
        (item, asked) -> {
          item.with("field", asked.flag().field());
          item.with("question", asked.flag().question());
          item.with("answer", asked.answer().word());
        });
    json.grounds(flags.grounds());
  }

  private static void outstanding(JsonObject json, Outstanding result) {
    json.with("test", result.test().code());
    json.with("state", result.state().word());
    time(json, "dueAt", result.dueAt());
    json.list("told", result.told(), (item, told) -> told(item, told, ""));
    json.grounds(result.grounds());
  }

  private static void critical(JsonObject json, CriticalValue value) {
    json.with("test", value.test().code());
    json.with("text", value.text());
    json.with("untold", value.isUntold());
    json.list("told", value.told(), (item, t) -> told(item, t.told(), t.delay()));
    json.grounds(value.grounds());
  }

  private static void told(JsonObject json, Told told, String delay) {
    json.with("who", told.who());
    time(json, "at", told.at());
    json.with("delay", delay);
  }

  private static void time(JsonObject json, String name, Optional<OffsetDateTime> time) {
    json.with(name, time.map(OffsetDateTime::toString));
  }
}
