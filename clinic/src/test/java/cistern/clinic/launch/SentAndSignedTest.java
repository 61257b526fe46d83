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

/** What comes from a laboratory, whose it is, and what is seen when it is signed. */
@TestInstance(Lifecycle.PER_CLASS)
class SentAndSignedTest {

  private static final Pattern FIELD =
      Pattern.compile("<input type=\"(?:text|hidden)\" name=\"([^\"]+)\" value=\"([^\"]*)\"");

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
    Clock then = Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC);
    String text =
        InventedCases.of(then).stream()
            .filter(t -> t.contains("\"" + file + "\""))
            .findFirst()
            .orElseThrow();
    return Caller.place(clinician.post("/import/take", Map.of("file", text)));
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private HttpResponse<String> save(String path, Map<String, String> typed) {
    return clinician.post(path, typed);
  }

  private static Map<String, String> fields(HttpResponse<String> page) {
    Map<String, String> fields = new HashMap<>();
    Matcher matcher = FIELD.matcher(page.body());
    while (matcher.find()) {
      fields.putIfAbsent(matcher.group(1), matcher.group(2));
    }
    fields.remove("_csrf");
    return fields;
  }

  @Nested
  class FromALaboratory {

    /** An invented message; its codes are LOINC's, its units UCUM's. */
    private static String message(String person, String albumin) {
      return String.join(
          "\r",
          "MSH|^~\\&|LAB|L|CLINIC|C|20340509101500+0000||ORU^R01^ORU_R01|m-" + albumin + "|T|2.5.1",
          "PID|1||" + person + "^^^L^MR||Invented^Person||20030101|F",
          "OBR|1||x|panel^Panel^L|||20340509081000+0000",
          "OBX|1|NM|1746-7^Albumin CSF^LN||" + albumin + "|mg/L|||||F|||20340509081000+0000",
          "OBX|2|NM|1751-7^Albumin serum^LN||44|g/L|||||F|||20340509082000+0000",
          "");
    }

    @Test
    void message_onACase_isPreviewedThenPutThereAndALaterOneAmends() {
      String path = begin("sent");
      save(path + "/question", Map.of("person.id", "P-9"));

      HttpResponse<String> preview =
          clinician.post(path + "/paste", Map.of("block", message("P-9", "204")));

      assertThat(preview.body())
          .contains("identifier P-9")
          .contains(">204 mg/L</td>")
          .contains("Put these results into sent");
      assertThat(last(path).number()).isEqualTo(2);
      clinician.post(path + "/paste/put", Map.of("sent", message("P-9", "204"), "reading", "0"));
      assertThat(last(path).workup().replaceAll("\\s", "")).contains("\"value\":204");
      clinician.post(path + "/paste/put", Map.of("sent", message("P-9", "214"), "reading", "0"));
      assertThat(last(path).number()).isEqualTo(4);
      assertThat(last(path).workup().replaceAll("\\s", ""))
          .contains("\"value\":214")
          .doesNotContain("\"value\":204");
      assertThat(clinician.get(path).body()).contains("results that were sent");
    }

    /** Two tubes, an antibody and bands: nothing of a message is lost on its way into a case. */
    @Test
    void message_ofTubesAndAnswers_isPutThereWhole() {
      String path = begin("answers");
      String answers =
          message("P-9", "204")
              + String.join(
                  "\r",
                  "OBX|3|NM|erythrocytes.csf.first^RBC^99CISTERN||900|/uL|||||F",
                  "OBX|4|NM|erythrocytes.csf.last^RBC^99CISTERN||40|/uL|||||F",
                  "OBX|5|ST|serology.mog-igg.serum^MOG^99CISTERN||negative||||||F",
                  "OBX|6|ST|100756-6^OCB^LN||positive||||||F",
                  "");

      assertThat(clinician.post(path + "/paste", Map.of("block", answers)).body())
          .contains(">900 /uL</td>", ">40 /uL</td>", "mog-igg", "Oligoclonal bands");
      clinician.post(path + "/paste/put", Map.of("sent", answers, "reading", "0"));

      assertThat(last(path).workup().replaceAll("\\s", ""))
          .contains("\"value\":900", "\"value\":40", "\"tube\":\"first\"", "\"tube\":\"last\"")
          .contains("{\"test\":\"mog-igg\",\"in\":\"serum\",\"result\":\"negative\"}");
      clinician.post(
          path + "/paste/put",
          Map.of("sent", answers.replace("negative", "positive"), "reading", "0"));
      assertThat(last(path).workup().replaceAll("\\s", ""))
          .contains("\"mog-igg\",\"in\":\"serum\",\"result\":\"positive\"")
          .doesNotContain("\"result\":\"negative\"");
    }

    @Test
    void message_ofBandsAlone_isReadAsAMessageWhenPasted() {
      String path = begin("bands-alone");
      String bands =
          message("P-9", "204").replaceAll("OBX[^\r]*\r", "")
              + "OBX|1|ST|100756-6^OCB^LN||positive||||||F\r";

      assertThat(clinician.post(path + "/paste", Map.of("block", bands)).body())
          .contains("What was sent", "Put these results into bands-alone");
    }

    @Test
    void message_ofAnotherPerson_isRefusedAndChangesNothing() {
      String path = begin("sent");
      save(path + "/question", Map.of("person.id", "P-8"));
      String theirs = message("P-9", "204");

      assertThat(clinician.post(path + "/paste", Map.of("block", theirs)).body())
          .contains("This is another person")
          .contains("identifier is P-9, that of this case P-8")
          .doesNotContain("Put these results");
      clinician.post(path + "/paste/put", Map.of("sent", theirs, "reading", "0"));
      assertThat(last(path).number()).isEqualTo(2);
    }
  }

  @Test
  void name_thatACaseBears_getsANumberAndTheHeadSaysWhoseItIs() {
    begin("alike");
    String other = begin("alike");
    save(other + "/question", Map.of("person.id", "p-77", "person.ageYears", "31"));

    assertThat(last(other).workup()).contains("\"alike-2\"");
    for (String screen : List.of("/results", "/plan", "/after", "/report", "/paste")) {
      assertThat(clinician.get(other + screen).body())
          .as(screen)
          .contains(">alike-2</a>")
          .contains("identifier p-77 · 31 years");
    }
  }

  @Test
  void report_ofAnEmptyCase_saysWhatIsOpenBesideItsButton() {
    String path = begin("empty");

    assertThat(clinician.get(path + "/report").body())
        .containsPattern("(?s)Open when you sign it now.*No result.*Sign as Invented clinician");
  }

  @Test
  void letter_changedSinceItWasSeen_isShownBeforeItIsSigned() {
    String path = example("typical-ms");
    String page = clinician.get(path + "/report").body();
    assertThat(page).contains("Chart comment").contains("For the person").contains("Letter to");
    Map<String, String> form = fields(clinician.get(path + "/report"));
    form.put("to", "Dr Referrer");
    form.put("conclusion", "I think of an attack.");

    HttpResponse<String> unseen = clinician.post(path + "/report", form);

    assertThat(unseen.statusCode()).isEqualTo(409);
    assertThat(unseen.body()).contains("read it, then sign").contains("I think of an attack.");
    Map<String, String> seen = fields(unseen);
    seen.put("to", "Dr Referrer");
    seen.put("conclusion", "I think of an attack.");
    assertThat(clinician.post(path + "/report", seen).statusCode()).isEqualTo(303);
    assertThat(clinician.get(path + "/report").body())
        .contains("Signed by Invented clinician on 9 May 2034")
        .contains("id=\"signed-chart\"");
    assertThat(clinician.get(path + "/report/1/letter").headers().firstValue("Content-Disposition"))
        .hasValueSatisfying(
            name -> assertThat(name).containsPattern("typical-ms[0-9-]*-2034-05-09-letter-1.pdf"));
    assertThat(clinician.get(path + "/report/1/fhir").body()).contains("\"Bundle\"");
    assertThat(clinician.get(path + "/report/1/hl7").body()).startsWith("MSH|");
  }

  /** The next puncture of somebody is one press, and finds the person there already. */
  @Test
  void puncture_ofTheSamePerson_isBegunInOnePressWithoutTheResults() {
    String first = example("typical-ms");

    String next = Caller.place(clinician.post(first + "/again", Map.of()));

    assertThat(next).isNotEqualTo(first);
    assertThat(last(next).workup())
        .contains("\"fennmoor-01\"")
        .doesNotContain("albumin")
        .doesNotContain("csfOnly");
  }
}
