package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.JsonText;
import cistern.exchange.lab.LocalMapping;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.exchange.table.TableWriter;
import cistern.exchange.workup.WorkupReading.Understood;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreter;
import cistern.statement.Statement;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Work-ups that go out through a carrier and come in again; invented data. What comes in must be
 * what went out, but for who read the bands: the expected values are those of the same file read
 * directly.
 */
class OutAndBackTest {

  private static final Facts FACTS = Facts.standard();
  private static final Interpreter INTERPRETER = Interpreter.of(FACTS);

  @TempDir private Path folder;

  private static String example(String name) throws IOException {
    return Files.readString(Path.of("..", "examples", name + ".json"))
        .replaceAll(",\\s*\"readBy\"\\s*:\\s*\"laboratory\"", "");
  }

  private static SentReport report(Understood read) {
    Interpretation interpretation = INTERPRETER.interpret(read.workup());
    return new SentReport(
        new SentWorkup(read.document(), FACTS),
        interpretation.findings().all().stream()
            .filter(Finding::isAsked)
            .map(finding -> SentFinding.of(finding, FACTS))
            .toList(),
        interpretation.statements().stream().map(Statement::text).toList(),
        interpretation.alerts().urgent().holding().stream().map(u -> u.words().say()).toList(),
        new Versions("test", interpretation.factsVersion()),
        Optional.of("%PDF-1.7 invented".getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "typical-ms",
        "bloody-tap",
        "infection-like",
        "low-serum-igg",
        "kappa-under-limit",
        "serum-days-later"
      })
  void carriers_ofAnInterpretedWorkup_bringTheSameResultsBack(String name) throws IOException {
    Read direct = Read.of(example(name));
    SentReport report = report(direct.workup());

    for (String sent : List.of(FhirWriter.write(report), Hl7Writer.write(report))) {
      Read back = Read.of(sent);
      assertThat(back.refusals()).isEmpty();
      assertThat(back.values()).containsExactlyInAnyOrderElementsOf(direct.values());
      assertThat(back.workup().workup().bands()).isEqualTo(direct.workup().workup().bands());
    }
  }

  @Test
  void carriers_ofAnEmergency_sayItFirstAndFlagIt() throws IOException {
    SentReport report = report(Read.of(example("infection-like")).workup());

    String first = report.urgent().getFirst();
    String message = Hl7Writer.write(report);
    String bundle = FhirWriter.write(report);

    assertThat(message.lines().filter(line -> line.contains("|AA|")).count())
        .isGreaterThanOrEqualTo(report.urgent().size());
    assertThat(message)
        .contains(Base64.getEncoder().encodeToString(report.pdf().orElseThrow()))
        .contains("^Base64^");
    assertThat(bundle).contains("\"AA\"").contains("\"conclusion\": \"" + first);
  }

  @Test
  void table_ofWorkups_isReadBackWithTheSameValues() throws IOException {
    for (String name : List.of("typical-ms", "bloody-tap", "serum-days-later")) {
      Read direct = Read.of(example(name));
      Interpretation interpretation = INTERPRETER.interpret(direct.workup().workup());
      TableWriter plain = TableWriter.of(false);
      TableWriter whole = TableWriter.of(true);

      Read back = Read.of(plain.heading() + plain.row(interpretation));

      assertThat(back.refusals()).isEmpty();
      assertThat(back.values()).containsExactlyInAnyOrderElementsOf(direct.values());
      assertThat(whole.row(interpretation).split(",", -1))
          .hasSameSizeAs(whole.heading().split(",", -1));
    }
  }

  @Test
  void propose_ofTablesAndMessages_namesWhatTheHeadingsSayAndNobody() throws IOException {
    Path table = folder.resolve("t.csv");
    Files.writeString(
        table, "id,CSF albumin (mg/L),serum albumin (g/L),Liquorzellen\nx,220,42,4\n");
    Path message = folder.resolve("m.hl7");
    Files.writeString(
        message,
        "MSH|^~\\&|a|b|||20310302||ORU^R01|1|T|2.5\rPID|1||p1\rOBR|1|||X^panel\r"
            + "OBX|1|NM|ALBC^albumin CSF^L||220|mg/L|||||F\r");
    InputProblems problems = new InputProblems();
    Intake intake = Intake.of(FACTS, LocalMapping.NONE);

    String columns = JsonText.of(intake.propose(table, problems).orElseThrow());
    String codes = JsonText.of(intake.propose(message, problems).orElseThrow());

    assertThat(problems.isValid()).isTrue();
    assertThat(columns)
        .contains("\"means\": \"albumin\"", "\"in\": \"csf\"", "\"unit\": \"g/L\"")
        .contains("\"confirmedBy\": \"\"");
    assertThat(codes).contains("\"code\": \"ALBC\"", "\"means\": \"albumin\"");
    assertThat(intake.propose(folder.resolve("none"), problems)).isEmpty();
    assertThat(problems.isValid()).isFalse();
  }
}
