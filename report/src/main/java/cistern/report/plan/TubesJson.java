package cistern.report.plan;

import cistern.puncture.procedure.CsfTest;
import cistern.puncture.specimen.Tube;
import cistern.puncture.specimen.TubePlan;
import cistern.report.json.JsonObject;
import java.util.List;

/** The tubes in order of filling, and what goes first when the draw is short. */
final class TubesJson {

  private TubesJson() {}

  static void write(JsonObject json, TubePlan plan) {
    json.list("tubes", plan.tubes(), TubesJson::tube);
    json.object(
        "draw",
        item -> {
          item.with("question", plan.question().code());
          item.with("template", plan.template().code());
          item.strings("ranked", codes(plan.ranked()));
          item.strings("dropFirst", codes(plan.dropFirst()));
          item.strings("dropped", codes(plan.dropped()));
          item.with("totalMl", plan.volumes().totalMl());
          item.with("minimumMl", plan.volumes().minimumMl());
          plan.volumes().availableMl().ifPresent(ml -> item.with("availableMl", ml));
          item.numbers(
              "minutesUntilMadeAgain",
              plan.volumes().minutes().least(),
              plan.volumes().minutes().middle(),
              plan.volumes().minutes().most());
          item.with("serum", plan.serum());
          item.strings("label", plan.label());
          item.strings("notes", plan.notes());
          item.grounds(plan.grounds());
        });
  }

  private static void tube(JsonObject json, Tube tube) {
    json.with("order", tube.order());
    json.with("ml", tube.ml());
    json.with("minimumMl", tube.minimumMl());
    json.strings("tests", tube.isReserve() ? List.of("reserve") : codes(tube.tests()));
    json.with("container", tube.container());
    json.with("limit", tube.limit());
    json.grounds(tube.grounds());
  }

  private static List<String> codes(List<CsfTest> tests) {
    return tests.stream().map(CsfTest::code).toList();
  }
}
