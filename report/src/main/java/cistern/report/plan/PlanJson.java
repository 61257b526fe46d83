package cistern.report.plan;

import cistern.finding.Problem;
import cistern.interpretation.Workup;
import cistern.puncture.PunctureEffect;
import cistern.puncture.PuncturePlan;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheRisk;
import cistern.puncture.headache.RiskFactor;
import cistern.puncture.readiness.Guidance;
import cistern.puncture.readiness.Guidance.Advice;
import cistern.report.json.JsonLines;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** A plan as one JSON object; numbers are not rounded. */
public final class PlanJson {

  private static final int VERSION = 1;

  private final String software;
  private final String facts;
  private final Optional<String> policy;

  private PlanJson(String software, String facts, Optional<String> policy) {
    this.software = software;
    this.facts = facts;
    this.policy = policy;
  }

  /**
   * A writer.
   *
   * @param software the name and version of the program
   * @param facts the names and versions of the fact tables
   * @param policy the local policy in force
   */
  public static PlanJson of(String software, String facts, Optional<String> policy) {
    return new PlanJson(software, facts, policy);
  }

  /** Writes one plan. */
  public void write(JsonGenerator json, Workup workup, PuncturePlan plan) {
    json.writeStartObject();
    json.writeNumberProperty("plan", VERSION);
    json.writeStringProperty("workup", workup.id());
    json.writeStringProperty("software", software);
    json.writeStringProperty("facts", facts);
    JsonLines.orNull(json, "policy", policy);
    json.writeBooleanProperty("invented", workup.remarks().isInvented());
    puncture(json, plan);
    precautions(json, "cautions", plan.readiness(), false);
    precautions(json, "checked", plan.readiness(), true);
    BleedingJson.write(json, plan);
    guidance(json, plan.technique());
    risk(json, plan.technique().headacheRisk());
    TubesJson.write(json, plan.tubes());
    JsonLines.strings(json, "consent", plan.readiness().consent());
    AfterwardsJson.write(json, plan);
    problems(json, workup.problems());
    json.writeEndObject();
  }

  private static void puncture(JsonGenerator json, PuncturePlan plan) {
    json.writeName("puncture");
    json.writeStartObject();
    for (PunctureEffect effect : plan.effects()) {
      json.writeStringProperty(effect.edition(), effect.effect().word());
    }
    json.writeEndObject();
  }

  private static void precautions(
      JsonGenerator json, String name, PuncturePlan.Ready ready, boolean isChecked) {
    json.writeName(name);
    json.writeStartArray();
    for (Precaution precaution : PlanOrder.precautions(ready)) {
      if (isChecked == (precaution.state() == Precaution.State.CHECKED)) {
        json.writeStartObject();
        json.writeStringProperty("code", precaution.code());
        json.writeStringProperty("state", precaution.state().word());
        json.writeStringProperty("text", precaution.text());
        JsonLines.grounds(json, precaution.grounds());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
  }

  private static void guidance(JsonGenerator json, PuncturePlan.Technique technique) {
    Guidance guidance = technique.guidance();
    json.writeName("guidance");
    json.writeStartObject();
    json.writeStringProperty("method", guidance.method().word());
    JsonLines.strings(json, "reasons", guidance.reasons());
    JsonLines.strings(json, "open", guidance.open());
    guidance.depth().ifPresent(depth -> depth(json, depth));
    json.writeName("doses");
    json.writeStartArray();
    for (Guidance.Dose dose : guidance.doses()) {
      json.writeStartObject();
      json.writeStringProperty("method", dose.method());
      json.writeStringProperty("unit", "mSv");
      json.writeNumberProperty("mean", dose.mean());
      pair(json, "range", dose.lower(), dose.upper());
      JsonLines.grounds(json, dose.grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
    advice(json, "advice", guidance.advice());
    advice(json, "technique", technique.advice());
    json.writeEndObject();
  }

  private static void depth(JsonGenerator json, Guidance.Depth depth) {
    json.writeName("depth");
    json.writeStartObject();
    json.writeNumberProperty("cm", depth.cm());
    json.writeStringProperty("from", depth.isMeasured() ? "images" : "bmi");
    json.writeBooleanProperty("deep", depth.isDeep());
    JsonLines.grounds(json, depth.grounds());
    json.writeEndObject();
  }

  private static void advice(JsonGenerator json, String name, List<Advice> advice) {
    json.writeName(name);
    json.writeStartArray();
    for (Advice one : advice) {
      json.writeStartObject();
      json.writeStringProperty("code", one.code());
      json.writeStringProperty("text", one.text());
      JsonLines.grounds(json, one.grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void risk(JsonGenerator json, HeadacheRisk risk) {
    json.writeName("headacheRisk");
    json.writeStartObject();
    pair(json, "band", risk.low(), risk.high());
    json.writeBooleanProperty("validated", false);
    json.writeStringProperty("label", risk.label());
    json.writeName("baselines");
    json.writeStartArray();
    for (HeadacheRisk.Baseline baseline : risk.baselines()) {
      json.writeStartObject();
      json.writeStringProperty("needle", baseline.needle());
      json.writeNumberProperty("risk", baseline.risk());
      JsonLines.grounds(json, baseline.grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeName("factors");
    json.writeStartArray();
    risk.factors().forEach(factor -> factor(json, factor));
    json.writeEndArray();
    JsonLines.grounds(json, risk.grounds());
    json.writeEndObject();
  }

  private static void factor(JsonGenerator json, RiskFactor factor) {
    json.writeStartObject();
    json.writeStringProperty("code", factor.code());
    json.writeStringProperty("term", factor.term());
    json.writeStringProperty("state", factor.state().word());
    JsonLines.orNull(json, "oddsRatio", factor.oddsRatio());
    json.writeStringProperty("note", factor.note());
    JsonLines.grounds(json, factor.grounds());
    json.writeEndObject();
  }

  private static void problems(JsonGenerator json, List<Problem> problems) {
    json.writeName("problems");
    json.writeStartArray();
    for (Problem problem : problems) {
      json.writeStartObject();
      json.writeStringProperty("code", problem.code());
      json.writeStringProperty("place", problem.place());
      json.writeStringProperty("text", problem.text());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  static void pair(JsonGenerator json, String name, double low, double high) {
    json.writeName(name);
    json.writeStartArray();
    json.writeNumber(low);
    json.writeNumber(high);
    json.writeEndArray();
  }
}
