package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command as a resident or a nurse uses it. */
class PlanTest {

  private static final String FUSED = "../examples/plan-anticoagulated.json";
  private static final String AFTER = "../examples/plan-afterwards.json";

  @TempDir Path folder;

  private static String text(Run run) {
    return run.out().replaceAll("\\s+", " ");
  }

  @Test
  void plan_anticoagulatedPerson_showsEveryGuidelinesAnswerAndReason() {
    Run run = Run.of("plan", FUSED);

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(text(run))
        .contains(
            "ABN 2018",
            "ESAIC/ESRA 2022",
            "ASRA",
            "NHS Lothian antithrombotic guide",
            "local policy")
        .contains("under 72 h (50 h since the last dose)", "lumbar fusion", "invented");
  }

  @Test
  void plan_asJson_holdsTheEffectOfThePuncture() {
    Run run = Run.of("plan", "--format", "json", FUSED);

    assertThat(run.out().replaceAll("\\s", ""))
        .startsWith("{\"plan\":2,\"workup\":\"plan-anticoagulated\"")
        .contains("\"puncture\":{\"2017\":\"narrows\",\"2024\":");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"plan-first", "plan-anticoagulated", "plan-short-draw", "plan-afterwards"})
  void plan_everyExample_isReadWithoutAProblem(String name) {
    Run run = Run.of("plan", "../examples/" + name + ".json");

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("The data of this work-up are invented")
        .doesNotContain("Problems with the input");
    assertThat(run.out().toLowerCase(Locale.ROOT)).doesNotContain("stop taking", "absent");
  }

  @Test
  void plan_afterwards_putsTheRedFlagFirstAndShowsWhatIsDue() {
    assertThat(text(Run.of("plan", AFTER)))
        .containsSubsequence("scan today.", "Critical values", "CSF glucose 2.1 mmol/L", "overdue");
  }

  @Test
  void plan_asOf_decidesWhatIsOverdue() throws IOException {
    String undated =
        Files.readString(Path.of(AFTER)).replace("\"asOf\": \"2031-03-09T09:00:00Z\",", "");

    assertThat(text(Run.withInput(undated, "plan", "-"))).doesNotContain("state: overdue");
    assertThat(text(Run.withInput(undated, "plan", "--as-of", "2031-04-01T00:00:00Z", "-")))
        .contains("state: overdue");
    assertThat(Run.withInput(undated, "plan", "--as-of", "tomorrow", "-").code()).isEqualTo(2);
  }

  @Test
  void plan_forPatient_isPlain() {
    assertThat(text(Run.of("plan", "--for", "patient", FUSED)))
        .startsWith("Before and after your lumbar puncture")
        .contains("Do not change or leave out a medicine by yourself")
        .doesNotContain("odds");
    assertThat(text(Run.of("plan", "--for", "patient", AFTER)))
        .startsWith("Please speak to your doctor today");
  }

  @Test
  void plan_asPdfAndHtml_areWrittenWhole() throws IOException {
    Path pdf = folder.resolve("plan.pdf");
    assertThat(Run.of("plan", "--format", "pdf", "--out", pdf.toString(), FUSED).code()).isZero();
    assertThat(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1)).startsWith("%PDF");
    assertThat(folder.toFile().list()).containsExactly("plan.pdf");
    assertThat(Run.of("plan", "--format", "html", FUSED).out()).startsWith("<!DOCTYPE html>");
  }

  @Test
  void plan_localPolicy_fillsInWhatWasNotRead() throws IOException {
    Path policy = folder.resolve("policy.json");
    String row = "antithrombotic.local.apixaban.high.any.hold-";
    Files.writeString(
        policy,
        """
        {"policy": 1, "name": "our ward", "facts": {
          "%slower": {"value": 2, "unit": "d", "source": "ward rule 4"},
          "%supper": {"value": 2, "unit": "d", "source": "ward rule 4"},
          "tubes.template": {"value": "chemistry-first", "source": "our laboratory"}}}
        """
            .formatted(row, row));

    Run run = Run.of("plan", "--policy", policy.toString(), FUSED);

    assertThat(run.err()).isEmpty();
    assertThat(text(run))
        .contains("answer: passed; reason: 48 h have passed", "local policy our ward");
  }

  @Test
  void plan_notValid_saysWhereAndWritesNothing() {
    Run run =
        Run.withInput(
            "{\"workup\":1,\"id\":\"a\",\"procedure\":{\"before\":{\"needle\":{\"tip\":\"blunt\"}}}}",
            "plan",
            "-");

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("procedure.before.needle.tip");
  }

  @Test
  void plan_fileThatCannotBeWritten_ends4() {
    Run run = Run.of("plan", "--out", folder.resolve("no/such/plan.txt").toString(), FUSED);

    assertThat(run.code()).isEqualTo(4);
  }

  @Test
  void plan_invalidPolicy_ends3() throws IOException {
    Path policy = folder.resolve("policy.json");
    Files.writeString(policy, "{}");

    assertThat(Run.of("plan", "--policy", policy.toString(), FUSED).code()).isEqualTo(3);
    assertThat(Run.of("compare", "--policy", policy.toString(), FUSED, AFTER).code()).isEqualTo(3);
  }
}
