package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a neurologist uses it at a second puncture. */
class CompareTest {

  private static final String FIRST = "../examples/repeat-first.json";
  private static final String SECOND = "../examples/repeat-second.json";
  private static final String THIRD = "../examples/repeat-other-method.json";

  @TempDir Path folder;

  @Test
  void compare_twoPunctures_saysWhatChanged() {
    Run run = Run.of("compare", FIRST, SECOND);

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("No longer demonstrated", "never a verdict", "Over 218 days", "invented")
        .contains("passing illness");
  }

  @Test
  void compare_asJson_holdsDaysChangesAndBands() {
    assertThat(Run.of("compare", "--format", "json", SECOND, FIRST).out().replaceAll("\\s", ""))
        .startsWith("{\"comparison\":1")
        .contains("\"person\":\"p-30\",\"days\":218.0", "\"changes\":[{\"code\":")
        .contains("\"bands\":{\"gained\":0,\"lost\":5,\"verdict\":\"lost\"");
  }

  @Test
  void compare_threeAsPage_drawsTheTimeLine() {
    assertThat(Run.of("compare", "--format", "html", FIRST, SECOND, THIRD).out())
        .contains("<svg", "3 punctures over");
  }

  @Test
  void compare_otherPerson_isRefusedUnlessDeclared() throws IOException {
    Path other = folder.resolve("other.json");
    Files.writeString(other, Files.readString(Path.of(SECOND)).replace("\"p-30\"", "\"p-31\""));

    Run refused = Run.of("compare", FIRST, other.toString());
    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err()).contains("person.id differs", "--same-person");
    assertThat(Run.of("compare", "--same-person", FIRST, other.toString()).code()).isZero();
  }

  @Test
  void compare_missingPerson_isRefused() throws IOException {
    Path nobody = folder.resolve("nobody.json");
    Files.writeString(nobody, Files.readString(Path.of(SECOND)).replace("\"id\": \"p-30\",", ""));

    assertThat(Run.of("compare", FIRST, nobody.toString()).err()).contains("person.id is missing");
  }

  @Test
  void compare_sameFileTwiceOrOneBadFile_ends3() throws IOException {
    Path bad = folder.resolve("bad.json");
    Files.writeString(bad, "{");

    assertThat(Run.of("compare", FIRST, FIRST).code()).isEqualTo(3);
    assertThat(Run.of("compare", FIRST, bad.toString()).code()).isEqualTo(3);
    assertThat(Run.of("compare", FIRST).code()).isEqualTo(2);
  }
}
