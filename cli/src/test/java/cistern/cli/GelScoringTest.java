package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Counts and patterns are the ground truth of the invented gels of {@code examples/}. */
class GelScoringTest {
  @TempDir private Path folder;

  private Run against(String truth) throws IOException {
    Path file = Files.writeString(folder.resolve("truth.json"), truth);
    return Run.of("read-gel", "../examples", "--against", file.toString());
  }

  @Test
  void readGel_againstTheTruth_saysHowManyAreRightByGroup() throws IOException {
    Run run =
        against(
            """
            {"truth": 1, "gels": [
              {"file": "gel-mixed.png", "group": "ours",
               "lanes": [{"name": "csf"}, {"name": "serum"}, {"name": "csf"}, {"name": "serum"},
                         {"name": "control"}, {"name": "control"}],
               "pairs": [{"pair": 0, "csfOnly": 7, "pattern": 3}, {"pair": 1, "csfOnly": 5, "pattern": 1}]},
              {"file": "none.png", "group": "lost", "lanes": [{"name": "csf"}, {"name": "serum"}],
               "pairs": [{"pair": 0, "csfOnly": 1, "pattern": 1}]}]}
            """);

    assertThat(run.code()).isZero();
    assertThat(run.out().lines())
        .hasSize(2)
        .anyMatch(
            l -> l.startsWith("ours: 1 gels, 2 good pairs: yes or no 0.500, exact count 0.500"))
        .anyMatch(l -> l.startsWith("lost: 1 gels, 1 good pairs: yes or no 0.000"));
    assertThat(run.err()).contains("none.png: ");
  }

  @Test
  void readGel_againstSomethingElse_isNotValid() throws IOException {
    assertThat(against("{\"gels\": 3}").code()).isEqualTo(3);
    assertThat(against("no JSON").code()).isEqualTo(3);
    assertThat(Run.of("read-gel", "../examples", "--against", "none.json").code()).isEqualTo(3);
  }
}
