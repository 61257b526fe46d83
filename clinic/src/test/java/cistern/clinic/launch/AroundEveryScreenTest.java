package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** What every screen of a case has: undo after a save, keys on request, reasons, print. */
@TestInstance(Lifecycle.PER_CLASS)
class AroundEveryScreenTest {

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

  private String example(String file) {
    String text =
        InventedCases.of(Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC))
            .stream()
            .filter(t -> t.contains("\"" + file + "\""))
            .findFirst()
            .orElseThrow();
    return Caller.place(clinician.post("/import/take", Map.of("file", text)));
  }

  private CaseVersion version(String path, long number) {
    return running
        .clinic()
        .cases()
        .version(path.substring("/cases/".length()), number)
        .orElseThrow();
  }

  private static HttpResponse<String> save(Caller caller, String path, String age, long base) {
    return caller.post(
        path + "/question", Map.of("base", Long.toString(base), "person.ageYears", age));
  }

  @Test
  void undo_afterASave_isANewVersionLikeTheOneBeforeWithItsReason() {
    String path = example("typical-ms");
    assertThat(clinician.get(path).body()).doesNotContain("Saved:");
    save(clinician, path, "77", 1);
    assertThat(clinician.get(path).body()).contains("Saved: Question and evidence, version 2");

    HttpResponse<String> undone =
        clinician.post(path + "/undo", Map.of("base", "2", "reason", "wrong person"));

    assertThat(undone.statusCode()).isEqualTo(303);
    assertThat(version(path, 3).workup()).isEqualTo(version(path, 1).workup());
    assertThat(version(path, 2).workup()).contains("77");
    assertThat(clinician.get(path).body()).contains("undone: Question and evidence (wrong person)");
    clinician.post(path + "/undo", Map.of("base", "3", "reason", ""));
    assertThat(version(path, 4).workup()).isEqualTo(version(path, 2).workup());
  }

  @Test
  void undo_ofWhatSomebodyElseChanged_isNotDone() {
    String path = example("typical-ms");
    save(clinician, path, "77", 1);
    Caller laboratory = running.signedIn(Role.LABORATORY);
    laboratory.post(path + "/results", Map.of("base", "2", "igg.csf", "6 mg/dL"));

    HttpResponse<String> late = clinician.post(path + "/undo", Map.of("base", "2"));
    HttpResponse<String> theirs = clinician.post(path + "/undo", Map.of("base", "3"));

    assertThat(late.statusCode()).isEqualTo(409);
    assertThat(theirs.statusCode()).isEqualTo(409);
    assertThat(late.body()).contains("nothing was undone");
    assertThat(clinician.get(path).body()).doesNotContain("Saved:");
    assertThat(laboratory.get(path).body()).contains("Saved: Results, version 3");
    assertThat(laboratory.post(path + "/undo", Map.of("base", "3")).statusCode()).isEqualTo(303);
    assertThat(version(path, 4).workup()).isEqualTo(version(path, 2).workup());
    assertThat(clinician.post("/cases/none/undo", Map.of()).statusCode()).isEqualTo(404);
  }

  @Test
  void values_ofTheTable_leadToTheirReasons() {
    String path = example("typical-ms");

    String says = clinician.get(path + "/says").body();

    assertThat(says)
        .contains("href=\"#why-albumin-quotient\"")
        .contains("<dl id=\"why-albumin-quotient\">")
        .contains("by age, 4 + age/15")
        .doesNotContain("our plus age over fifteen");
    // 6.0666… over 4.6363…, by hand from 31 years and 204 mg/L over 44 g/L.
    assertThat(says).contains("a value on the other side of ≤ 6.07: 1.31 times what it is");
  }

  @Test
  void plan_ofSomebodyOnAnticoagulants_hasATimeLineThatDefers() {
    String path = example("plan-anticoagulated");

    for (String screen : List.of("/plan", "/tubes")) {
      assertThat(clinician.get(path + screen).body())
          .as(screen)
          .contains("Apixaban, last dose")
          .contains("Defer to local policy and the licensed prescriber")
          .contains("puncture planned");
    }
    assertThat(clinician.get(path + "/labels").body())
        .contains("In order of filling")
        .contains("CSF 1/")
        .doesNotContain("Apixaban");
  }

  @Test
  void keysAndPrint_inABrowser_doWhatTheySay() {
    try (Chromium browser = new Chromium()) {
      Page page = browser.page(1280, ColorScheme.LIGHT);
      running.signIn(page, Role.CLINICIAN);
      String path = example("typical-ms");
      page.navigate(address(path));
      press(page);
      print(page, path);
    }
  }

  private void press(Page page) {
    page.keyboard().press("Tab");
    assertThat(page.locator(":focus").innerText()).isEqualTo("To the content");
    page.keyboard().press("Enter");
    assertThat(page.locator(":focus").getAttribute("id")).isEqualTo("content");
    page.keyboard().press("?");
    assertThat(page.getByText("Keyboard shortcuts").first().isVisible()).isTrue();
    assertThat(Chromium.brokenOfAll(page)).isEmpty();
    page.keyboard().press("Escape");
    page.keyboard().press("g");
    page.keyboard().press("1");
    page.waitForURL("**/question");
    page.locator("details.answered:has([name='person.ageYears']) summary").click();
    page.getByLabel("Age in years").fill("g d 33");
    assertThat(page.url()).endsWith("/question");
    page.getByLabel("Age in years").fill("33");
    page.keyboard().press("Control+Enter");
    page.getByText("Saved: Question and evidence").waitFor();
    page.waitForLoadState();
    page.keyboard().press("?");
    page.getByLabel("Keys without Ctrl").uncheck();
    page.keyboard().press("Escape");
    page.keyboard().press("?");
    assertThat(page.locator("#keys").isVisible()).isFalse();
  }

  /** Paper shows what was typed and what unfolds, and nothing to press. */
  private void print(Page page, String path) {
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    page.navigate(address(path + "/results"));
    assertThat(page.getByLabel("CSF albumin").isVisible()).isTrue();
    // The name of a row that unfolds is one; on paper it is a name like the others.
    assertThat(page.locator("button:not(.unfolds):visible").count()).isZero();
    assertThat(page.locator("button.unfolds:visible").first().innerText()).isEqualTo("albumin");
    assertThat(page.locator("nav:visible").count()).isZero();
    assertThat(page.getByText(", version 2 · identifier").isVisible()).isTrue();
    assertThat(page.getByText("All cases here are invented").isVisible()).isTrue();
    page.navigate(address(path));
    assertThat(page.locator(".undo").isVisible()).isFalse();
    page.navigate(address(path + "/says"));
    page.evaluate("dispatchEvent(new Event('beforeprint'))");
    assertThat(page.locator("#why-albumin-quotient").isVisible()).isTrue();
  }

  private String address(String path) {
    return "http://127.0.0.1:" + running.clinic().port() + path;
  }
}
