package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.status.RulesInForce;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Rules that a house decides for itself, and what a case would say with other numbers. */
class RulesScreenTest {

  private static final Pattern SEEN = Pattern.compile("name=\"seen\" value=\"([^\"]+)\"");
  private static final String RULE = "bands.cut-off";

  /** The standard cut-off is two bands (bands.tsv); from four on, three are borderline. */
  private static final Map<String, String> FOUR =
      Map.of(
          "rule", RULE,
          "value", "4",
          "unit", "1",
          "source", "Invented memo 9",
          "reason", "our own cohort");

  @TempDir private Path folder;

  private static String withThreeBands(Caller clinician, String name) {
    String path = Caller.place(clinician.post("/cases", Map.of("name", name)));
    clinician.post(path + "/question", Map.of("base", "1", "person.id", "id-of-" + name));
    clinician.post(path + "/bands", Map.of("base", "2", "bands.csfOnly", "3", "bands.shared", "0"));
    return path;
  }

  private static Map<String, String> with(Map<String, String> fields, String name, String value) {
    Map<String, String> all = new HashMap<>(fields);
    all.put(name, value);
    return all;
  }

  /** Looks at a rule, and saves just what was seen. */
  private static HttpResponse<String> kept(Caller caller, Map<String, String> fields) {
    Matcher seen = SEEN.matcher(caller.post("/rules/look", fields).body());
    assertThat(seen.find()).isTrue();
    return caller.post("/rules/save", with(fields, "seen", seen.group(1)));
  }

  private static String alters(HttpResponse<String> page) {
    return page.body().replaceFirst("(?s).*id=\"alters\"", "").replaceFirst("(?s)</section>.*", "");
  }

  @Test
  void rule_ofTheHouse_isSeenBeforeItIsSavedHoldsAtOnceAndIsTakenBack() throws IOException {
    Location location = Engines.folder();
    String open;
    String signed;
    String page;
    try (Running running = Running.on(location)) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      open = withThreeBands(clinician, "open-one");
      signed = withThreeBands(clinician, "signed-one");
      clinician.post(signed + "/report", Map.of("version", "3"));
      page = clinician.get(signed + "/report/1").body();

      checkLook(clinician, open);
      assertThat(kept(clinician, FOUR).statusCode()).isEqualTo(303);
      checkInForce(clinician, open);
      assertThat(clinician.get(signed + "/report/1").body()).isEqualTo(page);
      assertThat(clinician.get(signed + "/report").body())
          .contains("under other rules than those now");
      assertThat(clinician.get("/cases").body()).contains("borderline").doesNotContain("positive");
      assertThat(running.signedIn(Role.AUDITOR).get("/trail").body()).contains("rule-changed");
      checkFile(clinician, open);
    }
    try (Running running = Running.on(location)) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      checkInForce(clinician, open);
      checkBack(clinician, open);
      assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
    }
  }

  /** Each case that would say otherwise is named, and nothing is saved that was not seen. */
  private static void checkLook(Caller clinician, String open) {
    HttpResponse<String> look = clinician.post("/rules/look", FOUR);

    assertThat(alters(look))
        .contains("A verdict changes in 2 cases")
        .contains("open-one", "id-of-open-one", "signed-one", "id-of-signed-one")
        .contains("Bands: positive → borderline")
        .containsOnlyOnce(">signed under the old rule</td>")
        .containsOnlyOnce(">open</td>");
    HttpResponse<String> rest = clinician.post("/rules/look", with(FOUR, "after", "1"));
    assertThat(alters(rest))
        .contains("Looked at cases 2 to 2 of 2, the last changed first; not looked at here: 1.")
        .contains("A verdict changes in 1 case")
        .doesNotContain("Look at the next");
    assertThat(clinician.get(open).body()).contains("positive").contains("No local policy");
    HttpResponse<String> unseen = clinician.post("/rules/save", FOUR);
    assertThat(unseen.statusCode()).isEqualTo(409);
    assertThat(unseen.body()).contains("Nothing is saved yet");
    HttpResponse<String> other =
        clinician.post("/rules/save", with(with(FOUR, "value", "5"), "seen", seenIn(look)));
    assertThat(other.statusCode()).isEqualTo(409);
    assertThat(clinician.get("/rules").body()).contains("None yet.");
  }

  private static void checkBack(Caller clinician, String open) {
    Map<String, String> back = Map.of("rule", RULE, "back", "yes", "reason", "the audit");
    assertThat(alters(clinician.post("/rules/look", back))).contains("borderline → positive");
    kept(clinician, back);
    assertThat(clinician.get(open).body()).contains("positive").contains("No local policy");
    assertThat(clinician.get("/rules/rule?rule=" + RULE).body())
        .contains("Invented memo 9", "our own cohort", "the audit", "taken back");
    assertThat(clinician.get("/rules/rule?rule=" + RULE + "&from=1").body())
        .contains("name=\"value\" value=\"4\"")
        .contains("value=\"Invented memo 9\"");
  }

  private static String seenIn(HttpResponse<String> look) {
    Matcher seen = SEEN.matcher(look.body());
    assertThat(seen.find()).isTrue();
    return seen.group(1);
  }

  private static void checkInForce(Caller clinician, String path) {
    assertThat(clinician.get(path).body())
        .contains("borderline")
        .contains("Local policy house rules (change 1)");
  }

  /** What is signed holds the rules as a policy file, which every command takes. */
  private void checkFile(Caller clinician, String path) throws IOException {
    clinician.post(path + "/report", Map.of("version", "3"));
    String policy = clinician.get(path + "/report/1/policy").body();
    assertThat(clinician.get("/rules/file").body()).isEqualTo(policy);
    RulesInForce read = policy(policy);
    assertThat(read.facts().number(RULE)).isEqualTo(4);
    assertThat(read.facts().fact(RULE).source()).isEqualTo("Invented memo 9");
  }

  private RulesInForce policy(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("policy.json"), text);
    return CommandLine.populateCommand(new WhichPolicy(), "--policy", file.toString())
        .read(new Console(System.out, System.err))
        .orElseThrow();
  }

  @Test
  void rule_overAPolicyFile_winsAndGivesWayAgain() throws IOException {
    String file =
        "{\"policy\":1,\"name\":\"Invented\",\"facts\":{\"bands.cut-off\":"
            + "{\"value\":3,\"unit\":\"1\",\"source\":\"Invented decision\"}}}";
    try (Running running = Running.on(Engines.folder(), policy(file))) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      String path = withThreeBands(clinician, "between");
      assertThat(clinician.get(path).body()).contains("positive");
      kept(clinician, FOUR);
      assertThat(clinician.get(path).body())
          .contains("borderline")
          .containsPattern("Local policy Invented \\(file .{12}\\) and house rules \\(change 1\\)");
      assertThat(clinician.get("/rules/rule?rule=" + RULE).body())
          .containsPattern(">Policy file at the start</td><td[^>]*>3</td>")
          .containsPattern(">House rule</td><td[^>]*><strong>4</strong></td>");
      assertThat(clinician.get("/facts").body()).contains("by local policy; standard 2");
      kept(clinician, Map.of("rule", RULE, "back", "yes", "reason", "r"));
      assertThat(clinician.get(path).body()).contains("positive");
    }
  }

  @Test
  void rule_thatCannotBeRead_isAskedAboutBesideItsFieldAndLosesNothing() {
    try (Running running = Running.on(Engines.folder())) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      for (String step : List.of("/rules/look", "/rules/save")) {
        HttpResponse<String> page =
            clinician.post(
                step, with(with(with(FOUR, "value", "2.5"), "unit", "mg/L"), "reason", ""));
        assertThat(page.statusCode()).isEqualTo(422);
        assertThat(page.body())
            .contains("id=\"n-unit\"", "id=\"n-reason\"")
            .contains("aria-describedby=\"n-unit\"")
            .contains("value=\"2.5\"", "value=\"mg/L\"", "value=\"Invented memo 9\"");
      }
      assertThat(clinician.post("/rules/look", with(FOUR, "value", "2.5")).body())
          .contains("id=\"n-value\"");
      assertThat(clinician.post("/rules/look", with(FOUR, "value", "")).statusCode())
          .isEqualTo(422);
      assertThat(clinician.post("/rules/look", with(FOUR, "source", " ")).body())
          .contains("id=\"n-source\"");
      assertThat(clinician.post("/rules/save", with(FOUR, "rule", "input.file-size")).statusCode())
          .isEqualTo(404);
      Map<String, String> comma = with(with(FOUR, "rule", "igg-index.upper"), "value", "0,66");
      kept(clinician, comma);
      assertThat(running.clinic().context().medicine().facts().number("igg-index.upper"))
          .isEqualTo(0.66);
      assertThat(clinician.get("/rules?find=index+igg+upper").body()).contains("(standard 0.7)");
    }
  }

  @Test
  void rule_ofZoneUnitAndLetterhead_holdsOnScreensAndPapers() {
    try (Running running = Running.on(Engines.folder())) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      String path = withThreeBands(clinician, "papers");
      assertThat(clinician.get(path).body()).contains("9 May 2034, 08:00:00");
      kept(clinician, with(with(FOUR, "rule", "page.time-zone"), "value", "Asia/Tokyo"));
      assertThat(clinician.get(path).body()).contains("9 May 2034, 17:00:00");
      kept(clinician, with(with(FOUR, "rule", "unit.albumin.csf"), "value", "mg/dL"));
      assertThat(clinician.get(path + "/results").body()).contains("placeholder=\"mg/dL\"");
      String head = "Invented Clinic\nRoad 1";
      kept(clinician, with(with(FOUR, "rule", "page.letterhead"), "value", head));
      assertThat(clinician.get(path + "/report").body())
          .contains("<strong>Invented Clinic</strong><br/><strong>Road 1</strong>");
    }
  }

  /** 2.8 mmol/L of lactate (90.08 g/mol) are 25.2 mg/dL, two digits of which are known. */
  @Test
  void rule_ofTheUnitOfOneLaboratory_isSeenBeforeItHoldsForItsCasesAlone() {
    try (Running running = Running.on(Engines.folder())) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      String harbour = withLactate(clinician, "harbour", "Invented Harbour");
      String hill = withLactate(clinician, "hill", "Invented Hill");
      assertThat(
              clinician.get("/rules/rule?rule=unit.lactate.csf&laboratory=Invented+Harbour").body())
          .contains("Unit, lactate, CSF, of Invented Harbour");
      Map<String, String> unit =
          with(with(FOUR, "rule", "unit.lactate.csf@Invented Harbour"), "value", "mg/dL");
      assertThat(alters(clinician.post("/rules/look", unit)))
          .contains("No verdict changes; only numbers or words in 1.")
          .contains("2.8 mmol/L", "25 mg/dL", "limit ≤ 24.3");
      kept(clinician, unit);
      assertThat(clinician.get(harbour + "/report").body())
          .containsPattern("25[^0-9]{1,40}mg/dL")
          .doesNotContain("mmol/L");
      assertThat(clinician.get(hill + "/report").body()).contains("mmol/L").doesNotContain("mg/dL");
      assertThat(clinician.post("/rules/look", with(unit, "value", "mg/min")).body())
          .contains("id=\"n-value\"");
      assertThat(
              clinician.get("/rules/rule?rule=unit.lactate.csf&laboratory=invented+harbour").body())
          .contains("Unit, lactate, CSF, of Invented Harbour");
      kept(clinician, with(with(FOUR, "rule", "unit.lactate.csf"), "value", "mg/dL"));
      assertThat(clinician.get(hill + "/results").body()).contains("placeholder=\"mmol/L\"");
      kept(
          clinician,
          with(with(unit, "rule", "unit.lactate.csf@invented  hill"), "value", "as-typed"));
      assertThat(clinician.get(hill + "/results").body()).doesNotContain("placeholder=\"mmol/L\"");
    }
  }

  private static String withLactate(Caller clinician, String name, String laboratory) {
    String path = Caller.place(clinician.post("/cases", Map.of("name", name)));
    clinician.post(path + "/draw", Map.of("base", "1", "laboratory", laboratory));
    clinician.post(path + "/results", Map.of("base", "2", "lactate.csf", "2.8 mmol/L"));
    return path;
  }

  private static long rows(Running running) {
    return List.of("audit", "draft", "case_version", "case_summary", "rule_change").stream()
        .mapToLong(
            table ->
                running
                    .store()
                    .look(
                        sql -> sql.sql("select count(*) from " + table).query(Long.class).single()))
        .sum();
  }

  @Test
  void whatIf_withOtherNumbers_saysSoBesideTheCaseAndWritesNothing() {
    try (Running running = Running.on(Engines.folder())) {
      Caller clinician = running.signedIn(Role.CLINICIAN);
      String path = withThreeBands(clinician, "what-if");
      Caller nurse = running.signedIn(Role.NURSE);
      assertThat(Caller.place(nurse.post(path + "/what-if", Map.of()))).isEqualTo(path);
      assertThat(nurse.get(path).body()).contains("data-what-if").doesNotContain("House rules");
      assertThat(running.signedIn(Role.LABORATORY).get(path).body()).doesNotContain("data-what-if");
      clinician.get(path);
      long before = rows(running);
      String token = clinician.token();

      String four = clinician.post(path + "/what-if", Map.of(RULE, "4"), token).body();
      HttpResponse<String> wrong =
          clinician.post(path + "/what-if/look", Map.of(RULE, "2.5", "prior", "200"), token);

      assertThat(four)
          .contains("What if, not kept")
          .containsPattern(">Bands</td><td[^>]*>positive</td><td[^>]*><strong>borderline</strong>");
      assertThat(wrong.body()).contains("Not read").doesNotContain(">Bands</td>");
      assertThat(rows(running)).isEqualTo(before);
      assertThat(clinician.get(path).body()).contains("positive").contains("No local policy");
      checkNumbers(running, clinician);
    }
  }

  /**
   * The chance is the one that was typed; what was measured less exactly lies in a wider interval.
   */
  private static void checkNumbers(Running running, Caller clinician) {
    String text =
        InventedCases.of(running.clock()).stream()
            .filter(t -> t.contains("\"typical-ms\""))
            .findFirst()
            .orElseThrow();
    String path = Caller.place(clinician.post("/import/take", Map.of("file", text)));
    clinician.get(path);

    String look =
        clinician
            .post(
                path + "/what-if/look",
                Map.of("prior", "50", "cv.", "15", "kappa-index.upper", "200"))
            .body();

    assertThat(look).contains("probability that you stated (50 %;").contains(">κ index</td>");
    assertThat(look).containsPattern(">IgG index</td><td[^>]*>above.*</td><td[^>]*><strong>above");
  }
}
