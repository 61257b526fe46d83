package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.store.Engines;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.paper.PaperPage;
import cistern.report.plan.PlanPaper;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** Every screen of every invented case is made, and is valid HTML. */
@TestInstance(Lifecycle.PER_CLASS)
class EveryScreenTest {

  private static final List<String> SCREENS =
      List.of(
          "",
          "/question",
          "/plan",
          "/draw",
          "/results",
          "/bands",
          "/after",
          "/tubes",
          "/labels",
          "/says",
          "/report",
          "/compare",
          "/gel",
          "/paste");

  private static final Clock THEN =
      Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC);

  private final Pages pages = Pages.of();
  private final Running running = Running.on(Engines.folder());
  private final Caller clinician = running.signedIn(Role.CLINICIAN);

  @AfterAll
  void stop() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
    running.close();
  }

  @Test
  void everyScreen_ofEveryInventedCase_isMadeAndValid() {
    List<String> paths = new ArrayList<>();
    for (String text : InventedCases.of(THEN)) {
      String path = Caller.place(clinician.post("/import/take", Map.of("file", text)));
      paths.add(path);
      String name = OpenCase.of(last(path), medicine()).name();
      for (String screen : SCREENS) {
        HttpResponse<String> page = clinician.get(path + screen);
        assertThat(page.statusCode()).as(screen).isEqualTo(200);
        pages.check(name + screen, page.body());
      }
      assertThat(clinician.get(path + "/file").statusCode()).isEqualTo(200);
      assertThat(clinician.get(path + "/versions/1").statusCode()).isEqualTo(200);
    }
    checkLists();
    checkCase(paths.getFirst());
    checkPaper(OpenCase.of(last(paths.getFirst()), medicine()));
    checkPlaces();

    assertThat(pages.faults()).isEmpty();
    OutsideCheck.of(
            "Every screen, report and paper of the clinic is valid HTML",
            "the Nu Html Checker, with the rules that it carries",
            "no error")
        .toTable("no error");
  }

  private Medicine medicine() {
    return running.clinic().context().medicine();
  }

  private CaseVersion last(String path) {
    return running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow();
  }

  private void checkLists() {
    String day = Running.day(clinician);
    assertThat(day)
        .contains("Headache calls due (")
        .contains("Punctures planned (")
        .contains("Reports to sign (")
        .contains("Results overdue (");
    String cases = clinician.get("/cases").body();
    assertThat(cases).contains("typical-ms").contains("planned for");
    pages.check("the day", day);
    pages.check("cases", cases);
  }

  /** What comes of sending forms. */
  private void checkCase(String path) {
    clinician.post(path + "/report", Map.of("version", "1"));
    pages.check("what if", clinician.post(path + "/what-if", Map.of("prior", "x")).body());
    pages.check("signed", clinician.get(path + "/report/1").body());
    pages.check("reports", clinician.get(path + "/report").body());
    pages.check(
        "letter looked at",
        "<!DOCTYPE html><html lang=\"en\"><title>Look</title>"
            + clinician.post(path + "/report/look", Map.of("to", "Dr X")).body());
    pages.check("refused", clinician.post(path + "/report", Map.of("version", "9")).body());
    String file = last(path).workup().replaceFirst("\\{", "{ \"zodiac\": 1,");
    pages.check("preview", clinician.post("/import", Map.of("file", file)).body());
    pages.check("import refused", clinician.post("/import", Map.of("file", "{")).body());
    pages.check(
        "paste", clinician.post(path + "/paste", Map.of("block", "IgG CSF 3 mg/L\nx")).body());
    Map<String, String> typed = Map.of("base", "1", "person.ageYears", "thirty");
    pages.check("not valid", clinician.post(path + "/question", typed).body());
    pages.check(
        "looked at",
        "<!DOCTYPE html><html lang=\"en\"><title>Look</title>"
            + clinician.post(path + "/question/look", typed).body());
    pages.check("draft", clinician.get(path + "/question").body());
  }

  /** What the commands write. */
  private void checkPaper(OpenCase open) {
    Page page = Page.of("Cistern test", medicine().facts());
    for (Audience audience : Audience.values()) {
      pages.check("page for " + audience.word(), page.toHtml(open.interpretation(), audience));
    }
    pages.check(
        "plan",
        PaperPage.toHtml(
            PlanPaper.of(open.workup(), medicine().plan(open.interpretation()), "a test")));
  }

  /** What stands outside cases, for other roles and for nobody. */
  private void checkPlaces() {
    Map<String, String> typed =
        Map.of(
            "rule", "bands.cut-off", "value", "4", "unit", "1", "source", "memo", "reason", "why");
    pages.check("rule looked at", clinician.post("/rules/look", typed).body());
    pages.check(
        "rule refused", clinician.post("/rules/look", Map.of("rule", "tubes.template")).body());
    pages.check("rules", clinician.get("/rules?group=tubes").body());
    pages.check("zones", clinician.get("/rules/rule?rule=page.time-zone").body());
    for (String place : List.of("/cases/none", "/none", "/trail", "/facts", "/me")) {
      pages.check(place, clinician.get(place).body());
    }
    Caller auditor = running.signedIn(Role.AUDITOR);
    pages.check("trail", auditor.get("/trail").body());
    pages.check("trail checked", auditor.post("/trail", Map.of()).body());
    pages.check("trail refused", auditor.post("/trail/find", Map.of("case", "x")).body());
    String person = running.person(Role.CLINICIAN).id();
    pages.check("trail of a person", auditor.get("/trail?before=9&person=" + person).body());
    Caller chief = running.signedIn(Role.ADMINISTRATOR);
    pages.check("accounts", chief.get("/accounts").body());
    pages.check(
        "code",
        chief
            .post("/accounts", Map.of("name", "a.new", "fullName", "A New", "role", "nurse"))
            .body());
    pages.check("sign in", running.stranger().get("/sign-in").body());
  }
}
