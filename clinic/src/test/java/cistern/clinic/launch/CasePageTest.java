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
    void bands_whileTheyAreTyped_haveTheirVerdict() {
      Page page = opened(Caller.place(clinician.post("/cases", Map.of("name", "live"))), true);
      page.locator("[id='f-bands.csfOnly']").fill("8");
      page.locator("[id='f-bands.shared']").fill("0");
      PlaywrightAssertions.assertThat(page.locator("#verdict-bands")).containsText("positive");
      PlaywrightAssertions.assertThat(page.locator("button[value=bands]")).isVisible();
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

  @Nested
  class Steps {

    private static final String DRUG =
        "procedure.before.antithrombotics%5B0%5D.drug=Eliquis+5+mg"
            + "&procedure.before.antithrombotics%5B0%5D.lastDoseAt=2034-05-08T20:00";

    private String begun(String name) {
      return Caller.place(clinician.post("/cases", Map.of("name", name)));
    }

    @Test
    void block_answered_isALineAndWhatIsOpenStandsOpen() {
      String path = begun("folded");
      save(path, "plan", DRUG);
      Page page = opened(path + "/plan", false);
      Locator drug = page.getByLabel("Drug", new Page.GetByLabelOptions().setExact(true)).first();

      PlaywrightAssertions.assertThat(page.locator("details.answered").first())
          .containsText("Eliquis 5 mg · Last dose 8 May 2034, 20:00");
      PlaywrightAssertions.assertThat(drug).isHidden();
      PlaywrightAssertions.assertThat(
              page.getByLabel("Dose", new Page.GetByLabelOptions().setExact(true)).first())
          .isVisible();
      page.locator("details.answered summary").first().click();
      PlaywrightAssertions.assertThat(drug).hasValue("Eliquis 5 mg");
      PlaywrightAssertions.assertThat(
              page.locator("[data-field='procedure.before.thrombosis.bileafletAorticWithoutRisk']"))
          .isHidden();
      PlaywrightAssertions.assertThat(page.locator("details.answered").nth(1))
          .containsText("None so far");
    }

    @Test
    void block_withSomethingUnreadable_isOpen() {
      String path = begun("unreadable");
      save(path, "plan", "procedure.before.coagulation.inr=1.1");
      Page page = opened(path + "/plan", false);
      Locator inr = page.getByLabel("INR", new Page.GetByLabelOptions().setExact(true));
      PlaywrightAssertions.assertThat(inr).isHidden();
      page.getByText("INR 1.1").click();
      inr.fill("x");
      inr.press("Enter");

      PlaywrightAssertions.assertThat(inr).isVisible();
      PlaywrightAssertions.assertThat(inr).hasValue("x");
      PlaywrightAssertions.assertThat(inr).hasAttribute("aria-invalid", "true");
    }

    @Test
    void none_withoutScript_answersWhatIsNotAskedForItselfAndCanBeUndone() {
      String path = begun("none");
      save(path, "plan", "procedure.before.coagulation.bleedingDisorder=yes");
      save(path, "plan", "none=Signs&procedure.before.signs.papilloedema=yes");
      assertThat(clinician.get(path + "/file").body())
          .contains("\"papilloedema\": \"yes\"")
          .contains("\"siteInfection\": \"no\"");
      save(path, "plan", "none=Coagulation");
      assertThat(clinician.get(path + "/file").body())
          .contains("\"bleedingDisorder\": \"yes\"")
          .doesNotContain("inrNormal");
      String page = clinician.get(path + "/plan").body();
      assertThat(page).contains("Yes: papilloedema · No to the other 12 asked");
      assertThat(page).contains("Saved: Plan, version 3");
    }

    @Test
    void none_pressed_answersTheBlockAndPressedAgainIsUndone() {
      Page page = opened(begun("pressed") + "/plan", true);
      Locator block = page.locator("fieldset", new Page.LocatorOptions().setHasText("Allergies"));
      Locator no = block.locator("input[value=no]:checked");
      block.locator("[name$='.latex'][value=yes]").check();
      block.locator("button[name=none]").click();
      PlaywrightAssertions.assertThat(no).hasCount(3);
      assertThat(Chromium.brokenOfAll(page)).isEmpty();
      block.locator("button[name=none]").click();
      PlaywrightAssertions.assertThat(no).hasCount(0);
      assertThat(block.locator("[name$='.latex'][value=yes]").isChecked()).isTrue();
      assertThat(page.url()).endsWith("/plan");
    }

    @Test
    void field_thatHangsOnAnother_comesWhenThatIsAnswered() {
      Page page = opened(path("typical-ms") + "/after", true);
      Locator nausea = page.locator("[data-field='procedure.after.headache.nausea']");
      PlaywrightAssertions.assertThat(nausea).isHidden();
      page.locator("[name='procedure.after.headache.present'][value=yes]").check();
      PlaywrightAssertions.assertThat(nausea).isVisible();
      clinician.post(path("typical-ms") + "/after/drop", Map.of());
    }

    @Test
    void steps_onThePageOfTheCase_sayWhereTheyStandAndWhoChangedThem() {
      String path = begun("rows");
      save(path, "plan", DRUG + "&procedure.before.plannedAt=2034-05-10T09:00");

      assertThat(clinician.get(path).body())
          .contains("planned for 10 May 2034, 09:00. Wait: apixaban: 0 of 5 intervals over")
          .containsPattern("<span class=\"changed\">Invented clinician, [A-Z][^<]+</span>");
      assertThat(clinician.get(path("typical-ms")).body())
          .containsPattern("<span class=\"state\">drawn [^<]+, serum 15 min later</span>");
    }

    @Test
    void step_thatIsNotNeeded_isOneFoldThatOpensWithoutScript() {
      Page page = opened(path("typical-ms") + "/plan", false);
      Locator when = page.getByLabel("Planned for", new Page.GetByLabelOptions().setExact(true));
      PlaywrightAssertions.assertThat(when).isHidden();
      page.getByText("The puncture is done").click();
      PlaywrightAssertions.assertThat(when).isVisible();
      page.navigate(page.url().replaceFirst("/cases/.*", begun("early") + "/after"));
      PlaywrightAssertions.assertThat(page.getByText("Not needed yet")).isVisible();
    }
  }

  private HttpResponse<String> save(String path, String step, String fields) {
    long base =
        running.clinic().cases().find(path.substring("/cases/".length())).orElseThrow().number();
    return clinician.postText(path + "/" + step, "base=" + base + "&" + fields);
  }
}
