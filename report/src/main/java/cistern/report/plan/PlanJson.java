package cistern.report.plan;

import cistern.finding.Problem;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.ResultEffect;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheRisk;
import cistern.puncture.readiness.Guidance;
import cistern.puncture.readiness.Guidance.Advice;
import cistern.report.json.JsonObject;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** A plan as one JSON object; numbers are not rounded. */
public final class PlanJson {

  private static final int VERSION = 2;

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
    JsonObject.write(json, object -> write(object, workup, plan));
  }

  private void write(JsonObject json, Workup workup, PuncturePlan plan) {
    json.with("plan", VERSION);
    json.with("workup", workup.id());
    json.with("software", software);
    json.with("facts", facts);
    json.with("policy", policy);
    json.with("invented", workup.remarks().isInvented());
    DecisionJson.write(json, plan);
    puncture(json, plan);
    precautions(json, "cautions", plan.readiness(), false);
    precautions(json, "checked", plan.readiness(), true);
    BleedingJson.write(json, plan);
    guidance(json, plan.technique());
    risk(json, plan.technique().headacheRisk());
    TubesJson.write(json, plan.tubes());
    json.strings("consent", plan.readiness().consent());
    AfterwardsJson.write(json, plan);
    problems(json, workup.problems());
  }

  private static void puncture(JsonObject json, PuncturePlan plan) {
    json.object(
        "puncture",
        item -> {
          for (ResultEffect effect : plan.effects()) {
            item.with(effect.edition(), effect.effect().word());
          }
        });
  }

  private static void precautions(
      JsonObject json, String name, PuncturePlan.Ready ready, boolean isChecked) {
    json.list(
        name,
        PlanOrder.precautions(ready).stream()
            .filter(p -> isChecked == (p.state() == Precaution.State.CHECKED))
            .toList(),
        (item, precaution) -> {
          item.with("code", precaution.code());
          item.with("state", precaution.state().word());
          item.with("text", precaution.text());
          item.grounds(precaution.grounds());
        });
  }

  private static void guidance(JsonObject json, PuncturePlan.Technique technique) {
    Guidance guidance = technique.guidance();
    json.object(
        "guidance",
        item -> {
          item.with("method", guidance.method().word());
          item.strings("reasons", guidance.reasons());
          item.strings("open", guidance.open());
          guidance.depth().ifPresent(depth -> depth(item, depth));
          item.list(
              "doses",
              guidance.doses(),
              (one, dose) -> {
                one.with("method", dose.method());
                one.with("unit", "mSv");
                one.with("mean", dose.mean());
                one.numbers("range", dose.lower(), dose.upper());
                one.grounds(dose.grounds());
              });
          advice(item, "advice", guidance.advice());
          advice(item, "technique", technique.advice());
        });
  }

  private static void depth(JsonObject json, Guidance.Depth depth) {
    json.object(
        "depth",
        item -> {
          item.with("cm", depth.cm());
          item.with("from", depth.isMeasured() ? "images" : "bmi");
          item.with("deep", depth.isDeep());
          item.grounds(depth.grounds());
        });
  }

  private static void advice(JsonObject json, String name, List<Advice> advice) {
    json.list(
        name,
        advice,
        (item, one) -> {
          item.with("code", one.code());
          item.with("text", one.text());
          item.grounds(one.grounds());
        });
  }

  private static void risk(JsonObject json, HeadacheRisk risk) {
    json.object(
        "headacheRisk",
        item -> {
          item.numbers("band", risk.low(), risk.high());
          item.with("validated", false);
          item.with("label", risk.label());
          item.list(
              "figures",
              risk.figures(),
              (one, figure) -> {
                one.with("text", figure.text());
                one.with("share", figure.share());
                one.grounds(figure.grounds());
              });
          item.list("factors", risk.factors(), PlanJson::factor);
          item.grounds(risk.grounds());
        });
  }

  private static void factor(JsonObject json, HeadacheRisk.Factor factor) {
    json.with("code", factor.code());
    json.with("term", factor.term());
    json.with("state", factor.state().word());
    json.with("note", factor.note());
    json.grounds(factor.grounds());
  }

  private static void problems(JsonObject json, List<Problem> problems) {
    json.list(
        "problems",
        problems,
        (item, problem) -> {
          item.with("code", problem.code());
          item.with("place", problem.place());
          item.with("text", problem.text());
        });
  }
}
