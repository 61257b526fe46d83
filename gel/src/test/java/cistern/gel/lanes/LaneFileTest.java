package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LaneFileTest {
  @Test
  void read_twoLanes_comeFromTheLeft(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("lanes.json");
    Files.writeString(
        file,
        """
        {"note": [1, {"a": 2}], "lanes": [
          {"kind": "serum", "pair": 1, "xCentre": 230.5, "width": 62, "colour": {"x": 1}},
          {"kind": "csf", "pair": null, "xCentre": 130, "width": 61.5}]}
        """);
    LanePlan plan = LaneFile.read(file);
    assertThat(plan.isPlaced()).isTrue();
    assertThat(plan.lanes().getFirst().kind()).isEqualTo(LaneKind.CSF);
    assertThat(plan.lanes().getFirst().pair()).isEmpty();
    assertThat(plan.lanes().getLast().pair()).isEqualTo(OptionalInt.of(1));
    assertThat(plan.lanes().getLast().place()).contains(new NamedLane.Place(230.5, 62));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[]|$ should be",
        "{|not JSON",
        "{}|lanes should be at least one",
        "{\"lanes\":{}}|lanes should be an array",
        "{\"lanes\":[1]}|lanes[0] should be an object",
        "{\"lanes\":[{\"kind\":\"x\",\"xCentre\":1,\"width\":1}]}|lanes[0].kind",
        "{\"lanes\":[{\"kind\":\"csf\",\"width\":1}]}|lanes[0].xCentre",
        "{\"lanes\":[{\"kind\":\"csf\",\"xCentre\":1,\"width\":0}]}|lanes[0].width",
        "{\"lanes\":[{\"kind\":\"csf\",\"xCentre\":\"1\",\"width\":1}]}|xCentre should be a number",
        "{\"lanes\":[{\"kind\":\"csf\",\"pair\":\"1\",\"xCentre\":1,\"width\":1}]}|pair should be"
      })
  void parse_malformed_saysWhere(String text, String message) {
    assertThatThrownBy(() -> LaneFile.parse(text))
        .isInstanceOf(LaneFile.UnreadableLanes.class)
        .hasMessageContaining(message);
  }
}
