package cistern.report.json;

import cistern.conflict.Conflict;
import cistern.finding.Problem;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.panel.Pairing;
import cistern.report.chart.ChartComment;
import cistern.report.wording.PrintedTime;
import cistern.statement.Statement;
import cistern.uncertainty.RepeatChange;
import tools.jackson.core.JsonGenerator;

/** An interpretation as one JSON object; numbers are not rounded. */
public final class InterpretationJson {

  private static final int VERSION = 2;

  private final String software;
  private final PrintedTime times;

  private InterpretationJson(String software, PrintedTime times) {
    this.software = software;
    this.times = times;
  }

  /** A writer that names the software and its version. */
  public static InterpretationJson of(String software) {
    return new InterpretationJson(software, PrintedTime.AS_GIVEN);
  }

  /** The same with days printed otherwise in the comment for the chart. */
  public InterpretationJson with(PrintedTime chosen) {
    return new InterpretationJson(software, chosen);
  }

  /** Writes one interpretation. */
  public void write(JsonGenerator json, Interpretation interpretation) {
    JsonObject.write(json, object -> write(object, interpretation));
  }

  private void write(JsonObject json, Interpretation interpretation) {
    json.with("interpretation", VERSION);
    json.with("workup", interpretation.workup().id());
    json.with("software", software);
    json.with("facts", interpretation.factsVersion());
    json.with("policy", interpretation.policy());
    pairing(json, interpretation.panel().pairing());
    AlertsJson.write(json, interpretation.alerts());
    json.list("findings", interpretation.findings().all(), FindingJson::write);
    repeat(json, interpretation.repeat());
    BandsJson.write(json, interpretation.bands());
    WeighedJson.write(json, interpretation.weighed());
    json.ranked("statements", interpretation.statements(), InterpretationJson::statement);
    json.list("conflicts", interpretation.conflicts(), InterpretationJson::conflict);
    json.list("problems", interpretation.problems(), InterpretationJson::problem);
    json.list("cautions", interpretation.cautions(), InterpretationJson::caution);
    json.with("comment", ChartComment.of(interpretation, times));
  }

  private static void pairing(JsonObject json, Pairing pairing) {
    json.object(
        "pairing",
        item -> {
          item.with("verdict", pairing.verdict().word());
          item.with("hoursApart", pairing.hoursApart());
          item.grounds(pairing.grounds());
        });
  }

  private static void repeat(JsonObject json, RepeatChange repeat) {
    json.object(
        "repeat",
        item ->
            item.object(
                "byCode",
                codes -> repeat.each().forEach((code, chance) -> codes.with(code.code(), chance))));
  }

  private static void statement(JsonObject json, Statement statement) {
    json.with("code", statement.code());
    json.with("text", statement.text());
  }

  private static void conflict(JsonObject json, Conflict conflict) {
    json.with("code", conflict.code());
    json.strings("findings", conflict.findings());
    json.with("text", conflict.text());
  }

  private static void problem(JsonObject json, Problem problem) {
    json.with("code", problem.code());
    json.with("place", problem.place());
    json.with("text", problem.text());
    json.grounds(problem.grounds());
  }

  private static void caution(JsonObject json, Caution caution) {
    json.with("code", caution.code());
    json.with("text", caution.text());
  }
}
