package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Counts are the ground truth of the invented gels of {@code examples/}. */
class ReadGelTest {

  private static final String MIXED = "../examples/gel-mixed.png";
  private static final String LANES = "csf,serum,csf,serum,control,control";

  @TempDir private Path folder;

  @Test
  void readGel_asText_saysPatternAndThatAPersonConfirms() {
    Run run = Run.of("read-gel", MIXED, "--lanes", LANES);

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("Pair 0: positive; pattern 3", "7 bands only in the CSF, 2 shared")
        .contains("more than 99 chances in 100")
        .contains("until a person who sees the gel has confirmed it");
  }

  @Test
  void readGel_asJson_isOneObject() {
    Run run = Run.of("read-gel", MIXED, "--lanes", LANES, "--format", "json");

    assertThat(run.out())
        .startsWith("{\"reading\":1,\"image\":{\"file\":\"../examples/gel-mixed.png\"")
        .contains("\"csfOnly\":7,\"shared\":2,\"serumOnly\":0", "\"pattern\":3")
        .endsWith("}\n");
  }

  @Test
  void readGel_severalImages_areAnArrayAndABadOneDoesNotStopThem() {
    Run run = Run.of("read-gel", "none.png", MIXED, "pom.xml", "--format", "json");

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).startsWith("[{\"reading\":1").endsWith("}]\n");
    assertThat(run.err().lines())
        .containsExactly(
            "none.png: there is no file of this name.",
            "pom.xml: this is neither a PNG nor a JPEG nor a TIFF picture.");
  }

  @Test
  void readGel_nothingReadable_writesNothing() {
    Path out = folder.resolve("reading.json");

    Run run = Run.of("read-gel", "pom.xml", "--out", out.toString());

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(out).doesNotExist();
  }

  @Test
  void readGel_aFolder_cannotBeOpened() {
    Run run = Run.of("read-gel", folder.toString());

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("the file cannot be opened");
  }

  @Test
  void readGel_standardInput_isReadAndNamed() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    try (InputStream in = new ByteArrayInputStream(Files.readAllBytes(Path.of(MIXED)))) {
      Terminal terminal = new Terminal(in, out, new PrintStream(err, true, StandardCharsets.UTF_8));
      int code = Cistern.run(terminal, "read-gel", "-", "--lanes", LANES);
      assertThat(code).isZero();
    }
    assertThat(out.toString(StandardCharsets.UTF_8))
        .startsWith("standard input: 6 lanes, 2 pairs.");
  }

  @Test
  void readGel_outAndOverlay_areWritten() throws IOException {
    Path out = folder.resolve("reading.txt");
    Path overlay = folder.resolve("seen.png");

    Run run =
        Run.of(
            "read-gel",
            MIXED,
            "--lanes",
            LANES,
            "--out",
            out.toString(),
            "--overlay",
            overlay.toString());

    assertThat(run.code()).isZero();
    assertThat(run.out()).isEmpty();
    assertThat(out).content().contains("pattern 3");
    BufferedImage drawn = ImageIO.read(overlay.toFile());
    assertThat(drawn.getWidth()).isGreaterThanOrEqualTo(1000);
  }

  @Test
  void readGel_folderThatIsMissing_isNotWritten() {
    String nowhere = folder.resolve("none").resolve("seen.png").toString();

    assertThat(Run.of("read-gel", MIXED, "--overlay", nowhere).code()).isEqualTo(4);
    assertThat(Run.of("read-gel", MIXED, "--out", nowhere).code()).isEqualTo(4);
  }

  @Test
  void readGel_policyOfTheCutOff_changesTheVerdict() throws IOException {
    Path policy = folder.resolve("policy.json");
    Files.writeString(
        policy,
        """
        {"policy": 1, "name": "high", "facts": {"bands.cut-off": {"value": 9, "unit": "1", "source": "us"}}}
        """);

    Run run = Run.of("read-gel", MIXED, "--lanes", LANES, "--policy", policy.toString());

    assertThat(run.out()).contains("Pair 0: borderline; pattern 4");
  }

  @Test
  void facts_listTheReadersToo() {
    assertThat(Run.of("facts").out()).contains("gel.row.plain");
  }

  @Nested
  class Lanes {

    private Path laneFile(String text) throws IOException {
      return Files.writeString(folder.resolve("lanes.json"), text);
    }

    @Test
    void readGel_unknownKind_isAWrongCommand() {
      Run run = Run.of("read-gel", MIXED, "--lanes", "csf,plasma");

      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("not \"plasma\"");
    }

    @Test
    void readGel_otherCount_isAProblemWithBothCounts() {
      Run run = Run.of("read-gel", MIXED, "--lanes", "csf,serum,csf,serum", "--format", "json");

      assertThat(run.code()).isZero();
      assertThat(run.out())
          .contains("lane-count-differs", "4 lanes are named and 6 were found")
          .contains("\"pattern\":null");
    }

    @Test
    void readGel_laneFile_placesWin() throws IOException {
      Path file =
          laneFile(
              """
              {"lanes": [{"kind": "csf", "xCentre": 88, "width": 60}, {"kind": "serum", "xCentre": 167, "width": 60}]}
              """);

      Run run = Run.of("read-gel", MIXED, "--lane-file", file.toString(), "--format", "json");
      Run named =
          Run.of(
              "read-gel",
              MIXED,
              "--lane-file",
              file.toString(),
              "--lanes",
              "serum,csf",
              "--format",
              "json");

      assertThat(run.out()).contains("\"kind\":\"csf\",\"pair\":0,\"xCentre\":88.0,\"width\":60.0");
      assertThat(named.out()).contains("\"kind\":\"serum\",\"pair\":0,\"xCentre\":88.0");
    }

    @Test
    void readGel_laneFileAndOtherNames_isAWrongCommand() throws IOException {
      Path file = laneFile("{\"lanes\": [{\"kind\": \"csf\", \"xCentre\": 88, \"width\": 60}]}");

      Run run = Run.of("read-gel", MIXED, "--lane-file", file.toString(), "--lanes", "csf,serum");

      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("2 lanes are named and the lane file has 1");
    }

    @Test
    void readGel_brokenLaneFile_isNotValidWithItsPlace() throws IOException {
      Path file = laneFile("{\"lanes\": [{\"kind\": \"csf\", \"width\": 60}]}");

      Run run = Run.of("read-gel", MIXED, "--lane-file", file.toString());

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.err()).contains("lanes[0].xCentre should be a column of the picture");
      assertThat(run.out()).isEmpty();
    }

    @Test
    void readGel_noLaneFile_isNotValid() {
      assertThat(Run.of("read-gel", MIXED, "--lane-file", "none.json").code()).isEqualTo(3);
    }

    @Test
    void readGel_overlayOfSeveral_isAWrongCommand() {
      assertThat(Run.of("read-gel", MIXED, MIXED, "--overlay", "x.png").code()).isEqualTo(2);
    }
  }

  @Nested
  class InAWorkup {

    private Path workup(String bands) throws IOException {
      Path picture = folder.resolve("gel.png");
      Files.copy(Path.of(MIXED), picture);
      return Files.writeString(
          folder.resolve("workup.json"),
          """
          {"workup": 1, "id": "gel", "results": [], "bands": {"gel": "gel.png",
           "lanes": ["csf", "serum", "csf", "serum", "control", "control"]%s}}
          """
              .formatted(bands));
    }

    private Run interpret(String bands) throws IOException {
      return Run.of("interpret", "--format", "json", workup(bands).toString());
    }

    @Test
    void interpret_gel_entersUnconfirmed() throws IOException {
      assertThat(interpret("").out())
          .contains("\"csfOnly\" : 7", "\"confirmed\" : false", "\"gelReading\"")
          .contains("\"probabilityPositive\"", "\"ditBasis\" : null");
    }

    @Test
    void interpret_confirmedGel_counts() throws IOException {
      assertThat(interpret(", \"confirmedBy\": \"a reader\"").out())
          .contains("\"confirmed\" : true", "\"confirmedBy\" : \"a reader\"");
    }

    @Test
    void interpret_countsBesideIt_winAndBothAreShown() throws IOException {
      Path workup = workup(", \"csfOnly\": 5, \"shared\": 3, \"serumOnly\": 0");

      assertThat(Run.of("interpret", "--format", "json", workup.toString()).out())
          .contains("\"csfOnly\" : 5", "\"csfOnly\" : 7", "\"confirmed\" : true");
      assertThat(Run.of("interpret", workup.toString()).out())
          .containsPattern("instead of what was read\\s+from gel.png:\\s+7\\s+CSF-only");
      assertThat(Run.of("interpret", "--format", "html", workup.toString()).out())
          .contains("counts stand instead of what was read from gel.png: 7 CSF-only");
    }

    @Test
    void interpret_unreadableGel_isNotValidWithItsPlace() throws IOException {
      Path workup = workup(", \"pair\": 7");

      Run run = Run.of("interpret", workup.toString());

      assertThat(run.code()).isEqualTo(3);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains("bands.pair: The picture of the gel cannot be read: ");
    }
  }
}
