package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** Cases from the first word to the signed report, as browsers send them. */
@TestInstance(Lifecycle.PER_CLASS)
class JourneyTest {

  private static final Pattern FIELD =
      Pattern.compile(
          "<input type=\"(?:text|hidden|datetime-local)\" name=\"([^\"]+)\" value=\"([^\"]*)\"");

  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);

  @AfterEach
  void everyVersionIsAsItWasWritten() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
  }

  @AfterAll
  void stop() {
    running.close();
  }

  private String begin(String name) {
    return Caller.place(clinician.post("/cases", Map.of("name", name)));
  }

  private String example(String file) {
    List<String> all =
        InventedCases.of(Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC));
    String text =
        all.stream().filter(t -> t.contains("\"" + file + "\"")).findFirst().orElseThrow();
    return Caller.place(clinician.post("/import/take", Map.of("file", text)));
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private static Map<String, String> fields(HttpResponse<String> page) {
    Map<String, String> fields = new HashMap<>();
    Matcher matcher = FIELD.matcher(page.body());
    while (matcher.find()) {
      fields.put(matcher.group(1), matcher.group(2));
    }
    fields.remove("_csrf");
    return fields;
  }

  private Map<String, String> typed(String path, Map<String, String> changes) {
    Map<String, String> fields = fields(clinician.get(path));
    fields.putAll(changes);
    return fields;
  }

  private HttpResponse<String> save(String path, Map<String, String> changes) {
    return clinician.post(path, typed(path, changes));
  }

  @Nested
  class Working {

    @Test
    void case_fromItsNameToASignedPdf_takesEveryStep() {
      String path = begin("case-1");

      assertThat(save(path + "/question", Map.of("person.ageYears", "31", "question", "MS?")))
          .extracting(HttpResponse::statusCode)
          .isEqualTo(303);
      save(path + "/draw", Map.of("draws.csf.at", "2034-05-09T10:10"));
      save(
          path + "/results",
          Map.of(
              "albumin.csf", "20.4 mg/dL",
              "albumin.serum", "44 g/L",
              "igg.csf", "5.6 mg/dL",
              "igg.serum", "10.8 g/L",
              "kappa-flc.csf", "<0.3 mg/L"));
      save(path + "/bands", Map.of("bands.csfOnly", "8", "bands.shared", "0"));

      assertThat(last(path).number()).isEqualTo(5);
      // 204 mg/L / 44 g/L, computed by hand, times a thousand.
      assertThat(clinician.get(path + "/says").body())
          .contains("204 mg/L ÷ 44000 mg/L = 4.64")
          .contains("4.64")
          .contains("Why: every value");
      assertThat(Caller.place(sign(path, "5", ""))).isEqualTo(path + "/report");
      HttpResponse<String> pdf = clinician.get(path + "/report/1/pdf");
      assertThat(pdf.body()).startsWith("%PDF-1");
      assertThat(clinician.get(path + "/report/1").body())
          .contains("CSF work-up case-1")
          .contains("Report signed by Invented clinician on 9 May 2034")
          .contains("of version 5 of the case");
      assertThat(clinician.get(path + "/report/1/letter").body()).startsWith("%PDF-1");
      assertThat(clinician.get(path + "/report/1/patient").body()).startsWith("%PDF-1");
      assertThat(clinician.get(path + "/report/1/file").body()).isEqualTo(last(path).workup());
      assertThat(clinician.get(path).body()).contains("signed");
    }

    @Test
    void report_afterAChange_isAmendedWithAReasonAndStaysReadable() {
      String path = example("typical-ms");
      sign(path, "1", "");
      String first = clinician.get(path + "/report/1").body();
      save(path + "/bands", Map.of("bands.csfOnly", "3"));

      assertThat(clinician.get(path).body()).contains("signed; changed since");
      assertThat(sign(path, "1", "a miscount").statusCode()).isEqualTo(409);
      assertThat(sign(path, "2", " ").body()).contains("say why it is amended");
      assertThat(sign(path, "2", "a miscount").statusCode()).isEqualTo(303);

      assertThat(clinician.get(path + "/report/1").body()).isEqualTo(first);
      assertThat(clinician.get(path + "/report/2").body()).isNotEqualTo(first);
      assertThat(clinician.get(path + "/report").body()).contains("a miscount");
      assertThat(clinician.get(path + "/report/3").statusCode()).isEqualTo(404);
      assertThat(clinician.get(path + "/report/x").statusCode()).isEqualTo(404);
    }

    @Test
    void comparison_ofOnePersonsPunctures_isShown() {
      example("repeat-first");
      String second = example("repeat-second");

      assertThat(clinician.get(second + "/compare").body()).contains("Repeat punctures of person");
      assertThat(clinician.get(begin("other") + "/compare").body()).contains("has no identifier");
      String alone = begin("alone");
      save(alone + "/question", Map.of("person.id", "nobody-else"));
      assertThat(clinician.get(alone + "/compare").body()).contains("No other puncture");
    }

    @Test
    void import_isPreviewedAndNothingIsGuessed() {
      String file =
          "{\"workup\":1,\"id\":\"from-file\",\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\","
              + "\"below\":20,\"unit\":\"mg/dL\"}],\"zodiac\":\"unknown\"}";

      HttpResponse<String> preview = clinician.post("/import", Map.of("file", file));

      assertThat(preview.body())
          .containsPattern("What was not understood</h2><ul><li>[^<]*zodiac")
          .contains(">&lt;200</td>")
          .contains("Begin a case");
      assertThat(clinician.get("/cases").body()).doesNotContain("from-file");
      assertThat(clinician.post("/import", Map.of("file", "{")).statusCode()).isEqualTo(422);
      assertThat(clinician.post("/import/take", Map.of("file", "[]")).statusCode()).isEqualTo(422);
      assertThat(clinician.post("/cases", Map.of("name", "a/b")).body())
          .contains("No case was made");
      begin("two words");
      assertThat(clinician.get("/cases").body()).contains("two-words");
    }

    @Test
    void pastedBlock_isPreviewedThenStandsInTheForm() {
      String path = begin("pasted");
      // Browsers send two characters for a line break.
      String block = "Albumin CSF 204 mg/L\r\nIgG serum: 1,080 g/L\r\nzinc CSF 3 mg/L\r\n";

      HttpResponse<String> preview = clinician.post(path + "/paste", Map.of("block", block));
      HttpResponse<String> taken = clinician.post(path + "/paste/take", Map.of("block", block));

      assertThat(preview.body())
          .contains(">204 mg/L</td>")
          .containsPattern("not taken</h2><ul><li><span>IgG serum: 1,080 g/L: a comma")
          .contains("<li><span>zinc CSF 3 mg/L: this name is not known")
          .doesNotContain("\uFFFD");
      assertThat(Caller.place(taken)).isEqualTo(path + "/results");
      assertThat(last(path).number()).isEqualTo(1);
      HttpResponse<String> form = clinician.get(path + "/results");
      assertThat(form.body()).contains("was not saved");
      assertThat(fields(form)).containsEntry("albumin.csf", "204 mg/L");
      assertThat(clinician.post(path + "/results", fields(form)).statusCode()).isEqualTo(303);
      assertThat(last(path).workup()).contains("204").doesNotContain("080");
    }
  }

  @Nested
  class Typing {

    /**
     * An infection is saved and stands above; 8.8 g/L of protein that are typed are a block too.
     */
    @Test
    void look_secondEmergencyTyped_isSaidBesideTheSavedOne() {
      String path = Caller.place(clinician.post("/cases", Map.of("name", "two-emergencies")));
      Map<String, String> typed = new HashMap<>(Map.of("base", "1", "glucose.csf", "0.4 mmol/L"));
      clinician.post(path + "/results", typed);
      typed.put("base", "2");
      assertThat(clinician.post(path + "/results/look", typed).body())
          .doesNotContain("typed-alarm");
      typed.put("total-protein.csf", "8800 mg/L");
      assertThat(clinician.post(path + "/results/look", typed).body())
          .containsPattern("typed-alarm[^<]*Spinal block");
    }

    @Test
    void look_whileTyping_keepsADraftAndSaysWhatIsMadeOfIt() {
      String path = begin("typing") + "/results";
      Map<String, String> typed = typed(path, Map.of("albumin.csf", "20 furlongs"));

      assertThat(clinician.post(path + "/look", typed).body())
          .contains("Not read yet")
          .contains("CSF albumin");
      assertThat(fields(clinician.get(path))).containsEntry("albumin.csf", "20 furlongs");
      assertThat(Caller.place(clinician.post(path + "/drop", Map.of()))).isEqualTo(path);
      assertThat(fields(clinician.get(path))).containsEntry("albumin.csf", "");
    }

    @Test
    void save_ofWhatCannotBeRead_saysItBesideTheFieldAndSavesTheRest() {
      String path = begin("typing");

      HttpResponse<String> answer =
          save(path + "/question", Map.of("person.ageYears", "thirty", "question", "MS?"));

      assertThat(answer.statusCode()).isEqualTo(422);
      assertThat(answer.body())
          .contains("thirty")
          .contains("n-person.ageYears")
          .contains("MS?")
          .contains("Saved, except what is marked");
      assertThat(last(path).workup()).contains("MS?").doesNotContain("thirty");
      assertThat(fields(clinician.get(path + "/question")))
          .containsEntry("person.ageYears", "thirty");
    }

    @Test
    void results_asLaboratoriesPrintThem_areReadOrAskedAbout() {
      String path = begin("written");
      Map<String, String> typed =
          Map.of(
              "albumin.csf", "0,22 g/L",
              "albumin.serum", "44 g/l H",
              "igg.csf", "<10mg/l",
              "igg.serum", "1,080 mg/dL",
              "myelin-basic-protein.csf", "1.6");

      HttpResponse<String> answer = save(path + "/results", typed);

      assertThat(answer.statusCode()).isEqualTo(422);
      assertThat(answer.body())
          .contains("A comma may mark decimals or thousands")
          .contains("Of which unit?");
      assertThat(last(path).workup().replaceAll("\\s", ""))
          .contains("\"value\":0.22,\"unit\":\"g/L\"")
          .contains("\"value\":44,\"unit\":\"g/L\"")
          .contains("\"below\":10,\"unit\":\"mg/L\"")
          .doesNotContain("080")
          .doesNotContain("myelin");
      save(
          path + "/results",
          Map.of("igg.serum", "10.8 g/L", "myelin-basic-protein.csf", "1.6 ng/mL"));
      // The units are known now: a number alone is enough in the next case.
      String next = begin("written");
      assertThat(clinician.get(next + "/results").body()).contains("placeholder=\"ng/mL\"");
      save(next + "/results", Map.of("myelin-basic-protein.csf", "2"));
      assertThat(last(next).workup().replaceAll("\\s", ""))
          .contains("\"value\":2,\"unit\":\"ng/mL\"");
    }

    @Test
    void save_ofNothing_makesNoVersion() {
      String path = example("typical-ms");

      assertThat(save(path + "/bands", Map.of()).statusCode()).isEqualTo(303);
      assertThat(last(path).number()).isEqualTo(1);
    }

    @Test
    void version_takenBackTo_becomesTheNewestAndLosesNone() {
      String path = example("typical-ms");
      save(path + "/bands", Map.of("bands.csfOnly", "3"));

      assertThat(clinician.get(path).body()).contains("Take back to version 1");
      assertThat(Caller.place(clinician.post(path + "/versions/1", Map.of()))).isEqualTo(path);

      assertThat(last(path).number()).isEqualTo(3);
      assertThat(last(path).workup().replaceAll("\\s", ""))
          .isEqualTo(
              running
                  .clinic()
                  .cases()
                  .version(path.substring(7), 1)
                  .orElseThrow()
                  .workup()
                  .replaceAll("\\s", ""));
      assertThat(clinician.post(path + "/versions/9", Map.of()).statusCode()).isEqualTo(404);
    }

    @Test
    void save_ofOneField_leavesTheRestOfTheFileAsItWas() {
      String path = example("typical-ms");
      String before = last(path).workup();

      save(path + "/results", Map.of("igg.csf", "5.7 mg/dL"));

      String after = last(path).workup();
      assertThat(after).contains("5.7").doesNotContain("\"value\": 5.6");
      assertThat(after.replaceAll("\\s", "").replace("5.7", "5.6"))
          .isEqualTo(before.replaceAll("\\s", ""));
    }
  }

  @Nested
  class TogetherWithOthers {

    @Test
    void save_ofOtherFieldsAtOnce_keepsBoth() {
      String path = example("typical-ms");
      Map<String, String> mine = typed(path + "/results", Map.of("albumin.csf", "21 mg/dL"));
      Caller laboratory = running.signedIn(Role.LABORATORY);
      Map<String, String> theirs = fields(laboratory.get(path + "/results"));
      theirs.put("igg.csf", "6 mg/dL");

      assertThat(laboratory.post(path + "/results", theirs).statusCode()).isEqualTo(303);
      assertThat(clinician.post(path + "/results", mine).statusCode()).isEqualTo(303);

      assertThat(fields(clinician.get(path + "/results")))
          .containsEntry("albumin.csf", "21 mg/dL")
          .containsEntry("igg.csf", "6 mg/dL");
      assertThat(last(path).number()).isEqualTo(3);
    }

    @Test
    void save_ofTheSameField_showsTheOtherChangeAndLosesNone() {
      String path = example("typical-ms");
      Map<String, String> mine = typed(path + "/results", Map.of("albumin.csf", "21 mg/dL"));
      Caller laboratory = running.signedIn(Role.LABORATORY);
      Map<String, String> theirs = fields(laboratory.get(path + "/results"));
      theirs.put("albumin.csf", "22 mg/dL");
      laboratory.post(path + "/results", theirs);

      HttpResponse<String> collided = clinician.post(path + "/results", mine);

      assertThat(collided.statusCode()).isEqualTo(409);
      assertThat(collided.body())
          .contains("Invented laboratory")
          .contains("22 mg/dL")
          .contains("21 mg/dL");
      assertThat(last(path).workup()).contains("22");
      assertThat(clinician.post(path + "/results", fields(collided)).statusCode()).isEqualTo(303);
      assertThat(fields(clinician.get(path + "/results"))).containsEntry("albumin.csf", "21 mg/dL");
      assertThat(running.clinic().cases().version(path.substring(7), 2).orElseThrow().workup())
          .contains("22");
    }

    @Test
    void laboratory_seesNeitherTheAnswerNorTheReport() {
      String path = example("typical-ms");
      Caller laboratory = running.signedIn(Role.LABORATORY);

      assertThat(laboratory.get(path).body()).doesNotContain("class=\"answer\"");
      assertThat(laboratory.get(path + "/says").statusCode()).isEqualTo(403);
      assertThat(clinician.get(path + "/results").body()).contains("IgG is made inside");
      assertThat(laboratory.get(path + "/results").body())
          .contains("As it is typed")
          .doesNotContain("IgG is made inside");
    }

    @Test
    void screens_ofACaseThatIsNotThere_sayso() {
      for (String screen : List.of("", "/says", "/results", "/report", "/compare", "/paste")) {
        assertThat(clinician.get("/cases/none" + screen).statusCode()).as(screen).isEqualTo(404);
      }
      for (String form : List.of("/results", "/results/look", "/report", "/paste/take")) {
        assertThat(clinician.post("/cases/none" + form, Map.of()).statusCode())
            .as(form)
            .isEqualTo(404);
      }
    }
  }

  private HttpResponse<String> sign(String path, String version, String reason) {
    return clinician.post(path + "/report", Map.of("version", version, "reason", reason));
  }
}
