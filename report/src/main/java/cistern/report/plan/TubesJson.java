package cistern.report.plan;

import cistern.puncture.procedure.CsfTest;
import cistern.puncture.specimen.Tube;
import cistern.puncture.specimen.TubePlan;
import cistern.report.json.JsonLines;
import java.util.List;
import tools.jackson.core.JsonGenerator;

/** The tubes in order of filling, and what goes first when the draw is short. */
final class TubesJson {

  private TubesJson() {}

  static void write(JsonGenerator json, TubePlan plan) {
    json.writeName("tubes");
    json.writeStartArray();
    plan.tubes().forEach(tube -> tube(json, tube));
    json.writeEndArray();
    json.writeName("draw");
    json.writeStartObject();
    json.writeStringProperty("question", plan.question().code());
    json.writeStringProperty("template", plan.template().code());
    JsonLines.strings(json, "ranked", codes(plan.ranked()));
    JsonLines.strings(json, "dropFirst", codes(plan.dropFirst()));
    JsonLines.strings(json, "dropped", codes(plan.dropped()));
    json.writeNumberProperty("totalMl", plan.volumes().totalMl());
    json.writeNumberProperty("minimumMl", plan.volumes().minimumMl());
    plan.volumes().availableMl().ifPresent(ml -> json.writeNumberProperty("availableMl", ml));
    json.writeName("minutesUntilMadeAgain");
    json.writeStartArray();
    json.writeNumber(plan.volumes().minutes().least());
    json.writeNumber(plan.volumes().minutes().middle());
    json.writeNumber(plan.volumes().minutes().most());
    json.writeEndArray();
    json.writeStringProperty("serum", plan.serum());
    JsonLines.strings(json, "label", plan.label());
    JsonLines.strings(json, "notes", plan.notes());
    JsonLines.grounds(json, plan.grounds());
    json.writeEndObject();
  }

  private static void tube(JsonGenerator json, Tube tube) {
    json.writeStartObject();
    json.writeNumberProperty("order", tube.order());
    json.writeNumberProperty("ml", tube.ml());
    json.writeNumberProperty("minimumMl", tube.minimumMl());
    JsonLines.strings(json, "tests", tube.isReserve() ? List.of("reserve") : codes(tube.tests()));
    json.writeStringProperty("container", tube.container());
    json.writeStringProperty("limit", tube.limit());
    JsonLines.grounds(json, tube.grounds());
    json.writeEndObject();
  }

  private static List<String> codes(List<CsfTest> tests) {
    return tests.stream().map(CsfTest::code).toList();
  }
}
