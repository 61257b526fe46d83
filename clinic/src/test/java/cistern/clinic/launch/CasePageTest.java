package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** The page of one case: what its rows unfold to, and what of its steps is open. */
@TestInstance(Lifecycle.PER_CLASS)
class CasePageTest {

  private final Running running = Running.on(Engines.folder());
  private final Chromium browser = new Chromium();
  private final Caller clinician = running.signedIn(Role.CLINICIAN);
  private final Map<String, String> paths = new TreeMap<>();

  @BeforeAll
  void inventedCases() {
    for (String text :
        InventedCases.of(Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC))) {
      String path = Caller.place(clinician.post("/import/take", Map.of("file", text)));
      paths.put(text.replaceFirst("(?s).*?\"id\": \"([^\"]+)\".*", "$1"), path);
    }
  }

  @AfterAll
  void stop() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
    browser.close();
    running.close();
  }

  private String path(String name) {
    return paths.getOrDefault(name, name);
  }

  private Page page(boolean isScripted) {
    Page page =
        browser.page(
            new Browser.NewContextOptions()
                .setViewportSize(1440, 900)
                .setColorScheme(ColorScheme.LIGHT)
                .setJavaScriptEnabled(isScripted)
                .setTimezoneId("UTC"));
    running.signIn(page, Role.CLINICIAN);
    return page;
  }

  private Page opened(String path, boolean isScripted) {
    Page page = page(isScripted);
    page.navigate("http://127.0.0.1:" + running.clinic().port() + path);
    return page;
  }

  @Nested
  class Rows {

    @Test
    void row_unfolded_showsDiagramLimitSourceAndWhatElseIsComputed() {
      String closed = clinician.get(path("typical-ms")).body();
      String open = clinician.get(path("typical-ms") + "?unfolded=igg").body();

      assertThat(closed).doesNotContain("diagram-igg-quotient");
      assertThat(open)
          .contains("diagram-igg-quotient")
          .contains("IgG quotient above its limit: ")
          .contains("<dt>Source</dt>")
          .contains("<dt>Known how</dt>")
          .contains("IgG synthesis rate")
          .doesNotContain("diagram-kappa-quotient");
    }

    @Test
    void row_ofAPersonPuncturedBefore_namesTheEarlierValuesAndDrawsTheirPoint() {
      String open = clinician.get(path("repeat-second") + "?unfolded=igg+albumin").body();

      assertThat(open)
          .contains("Puncture 1, ")
          .contains(">repeat-first</a>")
          .contains("Earlier puncture 1: albumin ");
    }

    @Test
    void row_changed_saysWhatItWasBefore() {
      String path = Caller.place(clinician.post("/cases", Map.of("name", "changed-row")));
      clinician.post(path + "/results", Map.of("base", "1", "albumin.csf", "21 mg/dL"));
      clinician.post(path + "/results", Map.of("base", "2", "albumin.csf", "22 mg/dL"));

      assertThat(clinician.get(path + "?unfolded=albumin").body())
          .contains("Until version 2, ")
          .contains(": CSF albumin 21 mg/dL");
    }

    @Test
    void row_forWhoReadsNoReport_doesNotUnfold() {
      Caller laboratory = running.signedIn(Role.LABORATORY);

      assertThat(laboratory.get(path("typical-ms") + "?unfolded=igg").body())
          .contains("f-igg.csf")
          .doesNotContain("diagram-igg-quotient")
          .doesNotContain("aria-expanded");
    }

    @Test
    void row_forWhoOnlyReads_unfoldsByALink() {
      Caller nurse = running.signedIn(Role.NURSE);
      String path = path("typical-ms");

      assertThat(nurse.get(path).body()).contains(path + "?unfolded=igg#row-igg");
      assertThat(nurse.get(path + "?unfolded=igg").body()).contains("diagram-igg-quotient");
    }

    @Test
    void row_openWhileItIsTyped_followsInItsPlace() {
      Page page = opened(path("typical-ms"), true);
      Locator button = page.locator("button[value=igg]");
      button.click();
      page.locator("#more-igg figcaption").waitFor();
      PlaywrightAssertions.assertThat(button).hasAttribute("aria-expanded", "true");
      PlaywrightAssertions.assertThat(button).isFocused();
      double below = page.locator("#row-iga").boundingBox().y;
      page.locator("[id='f-igg.csf']").fill("7.6 mg/dL");
      PlaywrightAssertions.assertThat(page.locator("#more-igg")).containsText("76 mg/L");
      assertThat(page.locator("#row-iga").boundingBox().y).isEqualTo(below);
      assertThat(Chromium.brokenOfAll(page)).isEmpty();
      button.click();
      PlaywrightAssertions.assertThat(page.locator("#more-igg")).isHidden();
      assertThat(page.locator("[id='f-igg.csf']").inputValue()).isEqualTo("7.6 mg/dL");
      clinician.post(path("typical-ms") + "/results/drop", Map.of());
    }

    @Test
    void row_withoutScript_unfoldsAndLosesNothingTyped() {
      String path = path("bloody-tap");
      Page page = opened(path, false);
      page.locator("[id='f-igg.csf']").fill("8.8 mg/dL");
      page.locator("button[value=albumin]").click();
      page.locator("#more-albumin figcaption").waitFor();

      assertThat(page.locator("[id='f-igg.csf']").inputValue()).isEqualTo("8.8 mg/dL");
      page.locator("button[value=albumin]").click();
      PlaywrightAssertions.assertThat(page.locator("#more-albumin")).isHidden();
      page.locator("[id='f-igg.csf']").press("Enter");
      PlaywrightAssertions.assertThat(page.locator(".undo")).containsText("Saved: Results");
    }
  }

  private HttpResponse<String> save(String path, String step, String fields) {
    long base =
        running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow().number();
    return clinician.postText(path + "/" + step, "base=" + base + "&" + fields);
  }
}
