package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.clinic.account.Role;
import cistern.clinic.store.Engines;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/**
 * How many clicks each task takes, counted in a real browser. Choosing a file and marking a box are
 * clicks; typing and pasting are none.
 */
@TestInstance(Lifecycle.PER_CLASS)
class ClicksTest {

  private static final Path GEL =
      Path.of(System.getProperty("cistern.root", ".."), "examples", "gel-local.png");

  /** Sixteen values of one person without their units, as most laboratories always report them. */
  private static final Map<String, String> VALUES =
      Map.ofEntries(
          Map.entry("albumin.csf", "220"),
          Map.entry("albumin.serum", "42"),
          Map.entry("igg.csf", "62"),
          Map.entry("igg.serum", "11"),
          Map.entry("kappa-flc.csf", "4.1"),
          Map.entry("kappa-flc.serum", "12"),
          Map.entry("total-protein.csf", "0.41"),
          Map.entry("glucose.csf", "3.4"),
          Map.entry("glucose.serum", "5.2"),
          Map.entry("lactate.csf", "1.6"),
          Map.entry("leukocytes.csf", "7"),
          Map.entry("erythrocytes.csf", "2"),
          Map.entry("erythrocytes.blood", "4.7"),
          Map.entry("bands.csfOnly", "6"),
          Map.entry("bands.shared", "0"),
          Map.entry("bands.serumOnly", "0"));

  private final Running running = Running.on(Engines.folder());
  private final Chromium browser = new Chromium();
  private final Caller clinician = running.signedIn(Role.CLINICIAN);
  private final Page page = browser.page(1440, ColorScheme.LIGHT);
  private int clicks;

  @BeforeAll
  void comeIn() {
    InventedCases.of(Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC))
        .forEach(text -> clinician.post("/import/take", Map.of("file", text)));
    Running.day(clinician);
    running.signIn(page, Role.CLINICIAN);
  }

  @BeforeEach
  void theDay() {
    open("/day");
  }

  @AfterAll
  void stop() {
    browser.close();
    running.close();
  }

  private void open(String path) {
    page.navigate("http://127.0.0.1:" + running.clinic().port() + path);
    clicks = 0;
  }

  private String begun(String name) {
    return Caller.place(clinician.post("/cases", Map.of("name", name)));
  }

  private void click(Locator what) {
    clicks++;
    what.first().click();
  }

  private void press(String button) {
    click(page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button)));
  }

  private void follow(String link) {
    click(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(link).setExact(true)));
  }

  private void fill(String label, String value) {
    page.getByLabel(label, new Page.GetByLabelOptions().setExact(true)).first().fill(value);
  }

  private void shows(String words) {
    page.getByText(words).first().waitFor();
  }

  private void counted(String task, int most) {
    assertThat(clicks).as(task).isLessThanOrEqualTo(most);
    OutsideCheck.of("Clicks from " + task, "a real browser, ClicksTest", "at most " + most)
        .toTable(Integer.toString(clicks));
  }

  @Test
  void case_fromANewNameToASignedPdf_needsNoReading() throws IOException {
    page.locator("#f-name").fill("clicks-1");
    press("Begin");
    follow("Question and evidence");
    fill("Age in years", "31");
    fill("What is asked", "Antibody made inside the CNS?");
    press("Save");
    fill("CSF albumin", "20.4 mg/dL");
    fill("Serum albumin", "44 g/L");
    fill("Bands in the fluid only", "8");
    fill("Bands in both", "0");
    page.locator("#against-albumin .amount").getByText("quotient 4.64").waitFor();
    press("Save");
    follow("read and sign");
    press("Sign as");
    shows("Signed by Invented clinician");
    Download pdf = page.waitForDownload(() -> click(page.getByLabel("PDF of report 1")));

    assertThat(Files.size(pdf.path())).isGreaterThan(20_000);
    assertThat(pdf.suggestedFilename()).contains("clicks-1").contains("report-1.pdf");
    counted("new case to signed PDF", 12);
  }

  @Test
  void values_sixteenTyped_giveTheAnswerAndNeedNoUnit() {
    String path = begun("clicks-16");
    open(path);
    VALUES.forEach((name, value) -> page.locator("[id='f-" + name + "']").fill(value));
    press("Save");
    shows("IgG is made inside the CNS: 6 CSF-only bands");

    counted("16 typed values without a unit to the answer", 2);
    String file = clinician.get(path + "/file").body();
    assertThat(Pattern.compile("\"unit\": \"[^\"]").matcher(file).results()).hasSize(13);
    assertThat(file).contains("\"value\": 220,\n      \"unit\": \"mg/L\"");
    open(path);
    VALUES.forEach(
        (name, value) ->
            assertThat(page.locator("[id='f-" + name + "']").inputValue()).startsWith(value));
  }

  @Test
  void table_pastedOnTheCase_givesTheAnswer() {
    open(begun("clicks-pasted"));
    page.evaluate(
        "text => { const clipboardData = new DataTransfer(); clipboardData.setData('text', text);"
            + " document.body.dispatchEvent("
            + "new ClipboardEvent('paste', { clipboardData, bubbles: true })); }",
        "Test\tCSF (mg/L)\tSerum (g/L)\nalbumin\t220\t42\nIgG\t62\t11");
    press("Put these into the form");
    press("Save");
    page.locator("#against-albumin .amount").getByText("quotient 5.24").waitFor();

    counted("pasted table to the answer", 2);
  }

  @Test
  void gel_fromItsPictureAndFromTheDay_isConfirmed() {
    String path = begun("clicks-gel");
    open(path + "/gel");
    page.locator("#send-lanes").fill("csf,serum,csf,serum,control,control");
    page.locator("#send-pair").fill("1");
    clicks++;
    page.locator("#send-picture").setInputFiles(GEL);
    press("Read the picture");
    shows("not confirmed");
    press("Confirm as");
    shows("Confirmed by Invented clinician");
    counted("the picture of a gel to its counts confirmed", 3);
  }

  @Test
  void plan_withApixaban_says() {
    page.locator("#f-name").fill("clicks-plan");
    press("Begin");
    follow("Plan");
    fill("Planned for", "2034-05-10T09:00");
    fill("Drug", "Eliquis 5 mg");
    fill("Last dose", "2034-05-09T20:00");
    press("Save");
    shows("Wait: apixaban: 0 of 5 intervals over at the planned time.");

    counted("new case to a plan with apixaban", 6);
  }

  @Test
  void call_allWellAndNot_isDoneInItsRow() {
    Locator calls = page.locator("details.calling");
    click(calls.nth(0).locator("summary"));
    int before = calls.count();
    click(calls.nth(0).getByText("I asked everything"));
    PlaywrightAssertions.assertThat(calls).hasCount(before - 1);
    assertThat(page.locator(".emergency").count()).isZero();
    counted("the day to a call when all is well", 2);

    open("/day");
    Locator call = page.locator("details.calling").first();
    click(call.locator("summary"));
    for (int i = 0; i < 10; i++) {
      click(call.locator("input[type=checkbox]").nth(i));
    }
    click(call.getByText("I asked everything"));
    page.locator(".emergency").first().waitFor();
    counted("the day to a call with a headache and nine signs", 12);
  }

  @Test
  void puncture_again_isBegunFromTheDay() {
    page.getByLabel("Find by name").fill("typical-ms");
    press("Find");
    follow("typical-ms");
    String first = page.url();
    press("Begin another puncture of this person");
    page.waitForURL(url -> url.contains("/cases/") && !url.startsWith(first));
    assertThat(page.locator(".head").innerText()).contains("typical-ms-2");
    counted("the day to another puncture of the same person", 3);
  }

  @Test
  void case_past_isFound() {
    page.getByLabel("Find by name").fill("repeat-first");
    press("Find");
    follow("repeat-first");
    page.locator(".head .answer").waitFor();
    assertThat(page.locator(".head").innerText()).contains("repeat-first");
    counted("the day to a past case", 2);
  }
}
