package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.audit.AuditEntry;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Filter;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** What people do with a case from its question to the headache, and who is seen doing it. */
@TestInstance(Lifecycle.PER_CLASS)
class WholeWorkTest {

  private static final Pattern WHY =
      Pattern.compile("<dl id=\"why-([a-z-]+)\">(.*?)</dl>", Pattern.DOTALL);

  private final Location.Folder location = Engines.folder();
  private final Running running = Running.on(location);
  private final Caller clinician = running.signedIn(Role.CLINICIAN);

  @AfterEach
  void everythingIsAsItWasWritten() {
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
    String text =
        InventedCases.of(Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC))
            .stream()
            .filter(t -> t.contains("\"" + file + "\""))
            .findFirst()
            .orElseThrow();
    return Caller.place(clinician.post("/import/take", Map.of("file", text)));
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private HttpResponse<String> save(Caller caller, String path, String step, String fields) {
    return caller.postText(path + "/" + step, "base=" + last(path).number() + "&" + fields);
  }

  /** The plan says first whether the result would matter. */
  @Test
  void question_thenPlan_saysWhetherTheResultWouldMatter() {
    String path = begin("to-plan");
    save(clinician, path, "plan", "procedure.before.plannedAt=2034-05-10T09:00");

    assertThat(clinician.get(path + "/plan").body())
        .contains("What the result could do: criteria of");
    assertThat(clinician.get(path).body())
        .contains("planned for 10 May 2034, 09:00")
        .contains("Punctures planned");
  }

  @Test
  void steps_inAnyOrder_leadToTheSameFile() {
    List<String> steps =
        List.of(
            "question person.ageYears=31",
            "draw draws.csf.at=2034-05-09T07:00&draws.serum.at=2034-05-09T07:10",
            "results albumin.csf=204 mg/L&albumin.serum=44 g/L",
            "bands bands.csfOnly=8&bands.shared=0",
            "after procedure.after.headache.present=no");
    String one = begin("in-order");
    String other = begin("in-order");
    steps.forEach(s -> sent(one, s));
    steps.reversed().forEach(s -> sent(other, s));

    assertThat(said(other)).isEqualTo(said(one)).contains("4.64");
    assertThat(clinician.get(other).body()).contains("drawn 9 May 2034, 07:00, serum 10 min later");
  }

  /** What a case says, without the token of its page and the case's own number. */
  private String said(String path) {
    return clinician
        .get(path + "/says")
        .body()
        .replaceAll("name=\"_csrf\" value=\"[^\"]+\"", "")
        .replace("in-order-2", "in-order")
        .replace(path, "");
  }

  private void sent(String path, String step) {
    String[] parts = step.split(" ", 2);
    assertThat(save(clinician, path, parts[0], parts[1].replace(" ", "+")).statusCode())
        .as(step)
        .isEqualTo(303);
  }

  @Test
  void headache_askedForByANurse_endsTheCallAndIsSaidOnThePlan() {
    String path = begin("after-care");
    save(clinician, path, "draw", "draws.csf.at=2034-05-08T07:00&draws.serum.at=2034-05-08T07:00");
    assertThat(clinician.get(path).body()).contains("call due").contains("Headache calls due");
    Caller nurse = running.signedIn(Role.NURSE);

    save(
        nurse,
        path,
        "after",
        "procedure.after.headache.present=yes&procedure.after.headache.onsetAt=2034-05-08T19:00"
            + "&procedure.after.headache.days[0].day=1&procedure.after.headache.days[0].severity=6");

    assertThat(last(path).workup()).contains("\"severity\": 6");
    assertThat(nurse.get(path).body()).contains("a headache").doesNotContain("Headache calls due");
    assertThat(nurse.get(path + "/tubes").body())
        .contains("an unanswered red-flag question counts as open");
  }

  /** Weak legs after the puncture are an emergency: urgent.md, E1. */
  @Test
  void emergency_afterThePuncture_headsCaseAndDayUntilSomebodyClosesItByName() {
    String path = begin("weak-legs");
    save(clinician, path, "draw", "draws.csf.at=2034-05-08T07:00&draws.serum.at=2034-05-08T07:00");
    Caller nurse = running.signedIn(Role.NURSE);

    HttpResponse<String> called = nurse.postText(path + "/call", "sign=legWeakness&asked=all");

    assertThat(Caller.place(called)).isEqualTo(path);
    assertThat(last(path).workup())
        .contains("\"legWeakness\": \"yes\"")
        .contains("\"fever\": \"no\"");
    assertThat(nurse.get(path).body())
        .contains("<div class=\"emergency\"")
        .doesNotContain("that the program knows of is missing");
    assertThat(Running.day(nurse))
        .containsPattern("(?s)rowgroup\" colspan=\"4\">Emergencies.*weak-legs");
    Map<String, String> answer = Map.of("to", "spinal-emergency", "reason", "MRI done, clear");
    assertThat(nurse.post(path + "/answer", answer).statusCode()).isEqualTo(403);
    clinician.post(path + "/answer", Map.of("to", "spinal-emergency", "reason", " "));
    assertThat(clinician.get(path).body()).contains("<div class=\"emergency\"");

    clinician.post(path + "/answer", answer);

    assertThat(last(path).workup())
        .contains("\"to\": \"spinal-emergency\"")
        .contains("\"by\": \"Invented clinician\"")
        .contains("\"at\": \"2034-05-09T08:")
        .contains("\"reason\": \"MRI done, clear\"");
    assertThat(clinician.get(path).body())
        .doesNotContain("<div class=\"emergency\"")
        .contains("Closed by Invented clinician")
        .contains("MRI done, clear");
  }

  /** The names are those of the table of drugs. */
  @Test
  void drug_asItIsTyped_isReadOrAskedAboutAndNeverSilent() {
    String path = begin("drugs");
    String drug = "procedure.before.antithrombotics[0].drug=";

    assertThat(clinician.postText(path + "/plan/look", "base=1&" + drug + "Eliquis+5+mg").body())
        .contains("Read as apixaban");
    assertThat(clinician.postText(path + "/plan/look", "base=1&" + drug + "Eliqis").body())
        .contains("“Eliqis” is not known here")
        .contains("Did you mean");
    assertThat(clinician.get(path + "/plan").body())
        .contains("Did you mean")
        .contains("<datalist id=\"known-drugs\">");
  }

  @Test
  void bloodyTap_fromItsCells_isSaidAndCorrected() {
    String path = example("bloody-tap");

    assertThat(clinician.get(path + "/says").body())
        .contains("the CSF holds blood")
        .contains("<dl id=\"why-leukocytes-corrected\">");
    assertThat(clinician.get(path + "/results").body()).contains("the CSF holds blood");
  }

  @Test
  void serum_ofAnotherDay_isQuestionedAndDecidesNothing() {
    String path = begin("serum-late");
    save(clinician, path, "results", "albumin.csf=204+mg/L&albumin.serum=44+g/L");
    assertThat(clinician.get(path + "/says").body()).contains("204 mg/L ÷ 44000 mg/L = 4.64");
    String late = "draws.csf.at=2034-05-01T07:00&draws.serum.at=2034-05-09T07:00";
    assertThat(clinician.postText(path + "/draw/look", "base=2&" + late).body())
        .contains("192 h apart")
        .contains("undetermined");

    save(clinician, path, "draw", late);

    assertThat(clinician.get(path + "/says").body())
        .contains("is undetermined: CSF and serum were drawn too far apart")
        .contains("192 h apart");
    assertThat(clinician.get(path).body()).contains("serum 192.0 h later");
  }

  @Test
  void values_ofACase_eachSayFormulaNumbersLimitSourceAndStatus() {
    List<MatchResult> whys =
        WHY.matcher(clinician.get(example("typical-ms") + "/says").body()).results().toList();

    assertThat(whys).hasSizeGreaterThan(5);
    for (MatchResult why : whys) {
      assertThat(why.group(2))
          .as(why.group(1))
          .contains("<dt>Formula</dt><dd>")
          .contains("<dt>With the numbers</dt><dd>")
          .contains("<dt>Limit</dt><dd>")
          .contains("<dt>Verdict</dt><dd>")
          .contains("<dt>What would change it</dt><dd>")
          .contains("<dt>Source</dt><dd>")
          .containsPattern("<dt>Known how</dt><dd>[a-z-]+</dd>")
          .doesNotContain("<dd></dd>")
          .doesNotContain("<dd>not given</dd>");
    }
  }

  @Test
  void says_ofACase_weighsCriteriaAndWhatElseItCouldBe() {
    assertThat(clinician.get(example("typical-ms") + "/says").body())
        .contains("Criteria, each edition by itself")
        .contains("What positive against negative fluid changes");
  }

  @Test
  void report_ofAnOpenEmergency_saysWhatIsUnansweredBesideTheButton() {
    assertThat(clinician.get(example("infection-like") + "/report").body())
        .containsSubsequence("Open when you sign it now", "Bacterial meningitis pattern", "Sign as")
        .doesNotContain("will stand here");
    assertThat(clinician.get(example("typical-ms") + "/report").body())
        .doesNotContain("Bacterial meningitis");
  }

  @Test
  void report_thatIsSigned_showsTheHashThatTheStoreKeeps() {
    String path = begin("to-sign");
    clinician.post(path + "/report", Map.of("version", "1"));

    String hash = running.clinic().context().reports().of(path.substring(7)).getFirst().hash();
    assertThat(hash).hasSize(64);
    assertThat(clinician.get(path + "/report").body()).contains(hash);
  }

  /** Whatever shows a case leaves an entry with its number. */
  @Test
  void read_ofACaseByAnyRoute_standsInTheTrail() {
    String path = begin("to-read");
    clinician.post(path + "/report", Map.of("version", "1"));
    String id = path.substring("/cases/".length());
    List<String> silent = new ArrayList<>();
    running.clinic().routes().all().stream()
        .filter(r -> r.method().name().equals("GET") && r.path().startsWith("/cases/{id}"))
        .forEach(
            route -> {
              long before = lastEntry().number();
              clinician.get(
                  route
                      .path()
                      .replace("{id}", id)
                      .replace("{number}", "1")
                      .replaceAll("\\{[a-z]+\\}", "whole"));
              if (readers(id, before).isEmpty()) {
                silent.add(route.path());
              }
            });
    assertThat(silent).isEmpty();
    for (String list : List.of("/cases", "/day")) {
      clinician.get(list);
      assertThat(lastEntry().action()).as(list).isEqualTo("list-read");
    }
  }

  /** Entries about a case behind a number, by the clinician. */
  private List<AuditEntry> readers(String id, long number) {
    Filter filter = new Filter(id, running.person(Role.CLINICIAN).id());
    return running.store().look(sql -> AuditTrail.after(sql, filter, number, 9));
  }

  @Test
  void comparison_ofPunctures_isAReadOfEachCaseInIt() {
    String first = example("repeat-first");
    String second = example("repeat-second");
    String other = example("typical-ms");
    long before = lastEntry().number();

    assertThat(clinician.get(second + "/compare").body()).contains("Repeat punctures of person");

    assertThat(readers(first.substring("/cases/".length()), before)).hasSize(1);
    assertThat(readers(other.substring("/cases/".length()), before)).isEmpty();
  }

  private AuditEntry lastEntry() {
    return running.store().look(sql -> AuditTrail.last(sql, 1)).getFirst();
  }

  /** What the store cannot do is said in a sentence, nothing is lost, and it goes on by itself. */
  @Test
  void save_whileTheStoreIsGone_saysSoAndWorksWhenItIsBack() throws IOException {
    String path = begin("store-gone");
    Path away = location.folder().resolve("away.db");
    String token = clinician.token();
    Files.move(location.file(), away);

    HttpResponse<String> gone =
        clinician.post(path + "/question", Map.of("base", "1", "person.ageYears", "31"), token);
    Files.move(away, location.file());

    assertThat(gone.statusCode()).isEqualTo(503);
    assertThat(gone.body()).contains("What you typed stays in this tab");
    assertThat(last(path).number()).isEqualTo(1);
    assertThat(save(clinician, path, "question", "person.ageYears=31").statusCode()).isEqualTo(303);
  }
}
