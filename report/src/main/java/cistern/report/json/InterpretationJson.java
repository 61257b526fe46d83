package cistern.report.json;

import cistern.conflict.Conflict;
import cistern.finding.Problem;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.panel.Pairing;
import cistern.statement.Statement;
import cistern.uncertainty.RepeatChange;
import java.util.List;
import tools.jackson.core.JsonGenerator;

/** An interpretation as one JSON object; numbers are not rounded. */
public final class InterpretationJson {

  private static final int VERSION = 1;

  private final String software;

  private InterpretationJson(String software) {
    this.software = software;
  }

  /** A writer that names the software and its version. */
  public static InterpretationJson of(String software) {
    return new InterpretationJson(software);
  }

  /** Writes one interpretation. */
  public void write(JsonGenerator json, Interpretation interpretation) {
    json.writeStartObject();
    json.writeNumberProperty("interpretation", VERSION);
    json.writeStringProperty("workup", interpretation.workup().id());
    json.writeStringProperty("software", software);
    json.writeStringProperty("facts", interpretation.factsVersion());
    JsonLines.orNull(json, "policy", interpretation.policy());
    pairing(json, interpretation.panel().pairing());
    JsonLines.list(json, "findings", interpretation.findings().all(), FindingJson::write);
    repeat(json, interpretation.repeat());
    BandsJson.write(json, interpretation.bands());
    WeighedJson.write(json, interpretation.weighed());
    statements(json, interpretation.statements());
    JsonLines.list(json, "conflicts", interpretation.conflicts(), InterpretationJson::conflict);
    JsonLines.list(json, "problems", interpretation.problems(), InterpretationJson::problem);
    JsonLines.list(json, "cautions", interpretation.cautions(), InterpretationJson::caution);
    json.writeEndObject();
  }

  private static void pairing(JsonGenerator json, Pairing pairing) {
    json.writeName("pairing");
    json.writeStartObject();
    json.writeStringProperty("verdict", pairing.verdict().word());
    JsonLines.orNull(json, "hoursApart", pairing.hoursApart());
    JsonLines.grounds(json, pairing.grounds());
    json.writeEndObject();
  }

  private static void repeat(JsonGenerator json, RepeatChange repeat) {
    json.writeName("repeat");
    json.writeStartObject();
    json.writeNumberProperty("probabilityOfChange", repeat.any());
    json.writeName("byCode");
    json.writeStartObject();
    repeat.each().forEach((code, chance) -> json.writeNumberProperty(code.code(), chance));
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void statements(JsonGenerator json, List<Statement> statements) {
    json.writeName("statements");
    json.writeStartArray();
    for (int i = 0; i < statements.size(); i++) {
      json.writeStartObject();
      json.writeNumberProperty("rank", i + 1);
      json.writeStringProperty("code", statements.get(i).code());
      json.writeStringProperty("text", statements.get(i).text());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void conflict(JsonGenerator json, Conflict conflict) {
    json.writeStartObject();
    json.writeStringProperty("code", conflict.code());
    JsonLines.strings(json, "findings", conflict.findings());
    json.writeStringProperty("text", conflict.text());
    json.writeEndObject();
  }

  private static void problem(JsonGenerator json, Problem problem) {
    json.writeStartObject();
    json.writeStringProperty("code", problem.code());
    json.writeStringProperty("place", problem.place());
    json.writeStringProperty("text", problem.text());
    JsonLines.grounds(json, problem.grounds());
    json.writeEndObject();
  }

  private static void caution(JsonGenerator json, Caution caution) {
    json.writeStartObject();
    json.writeStringProperty("code", caution.code());
    json.writeStringProperty("text", caution.text());
    json.writeEndObject();
  }
}
