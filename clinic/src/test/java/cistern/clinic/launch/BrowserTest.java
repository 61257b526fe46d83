package cistern.clinic.launch;

import static com.microsoft.playwright.options.WaitForSelectorState.DETACHED;
import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.store.Engines;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** The application in a real browser, as people use it. */
@TestInstance(Lifecycle.PER_CLASS)
class BrowserTest {

  private static final String RULE = "/rules/rule?rule=kappa-index.upper";
  private static final List<String> STEPS =
      List.of(
          "",
          "/question",
          "/plan",
          "/draw",
          "/results",
          "/bands",
          "/after",
          "/tubes",
          "/says",
          "/report",
          "/compare",
          "/paste");
  private static final List<String> OTHERS =
      List.of("/day", "/cases", "/me", "/figures", "/rules?group=cut_offs", RULE);
  private static final int WIDE = 1440;

  /** Made of the same parts as others, so that a narrow and dark one is looked at by its width. */
  private static final List<String> SAME_WHEN_NARROW =
      List.of("case-question", "case-draw", "case-bands", "case-compare", "case-paste", "-me");

  private final Running running = Running.on(Engines.folder());
  private final List<String> complaints = new ArrayList<>();
  private final Chromium browser = new Chromium();

  @BeforeAll
  void inventedCases() {
    Caller clinician = running.signedIn(Role.CLINICIAN);
    InventedCases.of(Clock.fixed(Instant.parse("2034-05-09T08:00:00Z"), ZoneOffset.UTC))
        .forEach(text -> clinician.post("/import/take", Map.of("file", text)));
  }

  @BeforeEach
  void nothingToComplainOf() {
    complaints.clear();
  }

  @AfterAll
  void stop() {
    browser.close();
    running.close();
  }

  private String address(String path) {
    return "http://127.0.0.1:" + running.clinic().port() + path;
  }

  /** A page in which somebody of a role has come in; its console is listened to. */
  private Page signedIn(Role role, int width, ColorScheme scheme) {
    Page page = browser.page(width, scheme);
    page.onConsoleMessage(
        message -> {
          if (message.type().equals("error") && !message.text().contains("status of 4")) {
            complaints.add(message.text());
          }
        });
    page.onPageError(complaints::add);
    page.navigate(
        address("/sign-in?code=" + running.clinic().codes().make(running.person(role), "")));
    click(page, "Come in");
    return page;
  }

  private Page clinician() {
    return signedIn(Role.CLINICIAN, 1440, ColorScheme.LIGHT);
  }

  /** Waits until {@code page} holds {@code words}, in its text or in what a field holds. */
  private static void shows(Page page, String words) {
    page.waitForCondition(() -> page.content().contains(words));
  }

  private static void click(Page page, String button) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button)).first().click();
  }

  private static void fill(Page page, String label, String value) {
    page.getByLabel(label, new Page.GetByLabelOptions().setExact(true)).first().fill(value);
  }

  private static void unfoldQuestion(Page page) {
    page.locator("details.answered:has([name=question]) summary").click();
  }

  @Test
  void typing_whenTheSessionEnds_isThereAfterSigningInAgain() {
    Page page = clinician();
    String path = pathOf(page, "barrier-leak") + "/question";
    page.navigate(address(path));
    unfoldQuestion(page);
    fill(page, "What is asked", "typed before the session ended");
    page.waitForTimeout(100);
    page.context().clearCookies();
    click(page, "Save");
    shows(page, "session that has ended");
    String code = running.clinic().codes().make(running.person(Role.CLINICIAN), "");
    page.navigate(address("/sign-in?code=" + code));
    click(page, "Come in");
    page.navigate(address(path));
    assertThat(page.getByLabel("What is asked").inputValue())
        .isEqualTo("typed before the session ended");
    click(page, "Save");
    shows(page, "typed before the session ended");
  }

  @Test
  void typing_whenTheSessionEndsWithoutScript_goesWithTheSignIn() {
    Page scripted = clinician();
    String path = pathOf(scripted, "barrier-leak") + "/question";
    Page page = browser.page(new Browser.NewContextOptions().setJavaScriptEnabled(false));
    BrowserContext context = page.context();
    context.addCookies(scripted.context().cookies());
    page.navigate(address(path));
    unfoldQuestion(page);
    fill(page, "What is asked", "typed\nwithout script");
    context.clearCookies();
    click(page, "Save");
    shows(page, "what you typed is not lost");
    page.getByLabel("One-time code").fill("AAAA-AAAA");
    click(page, "Come in");
    String code = running.clinic().codes().make(running.person(Role.CLINICIAN), "");
    page.getByLabel("One-time code").fill(code);
    click(page, "Come in");
    shows(page, "nothing is lost");
    shows(page, "without script");
    click(page, "Send it now");
    assertThat(page.url()).doesNotContain("question");
    page.navigate(address(path));
    assertThat(page.getByLabel("What is asked").inputValue()).isEqualTo("typed\nwithout script");
  }

  @Test
  void day_whileCasesAreStillRead_renewsItself() {
    Page page = clinician();
    running.clock().hold();
    page.navigate(address("/cases"));
    fill(page, "A name for the case, without anything that tells who it is", "not-yet-read");
    click(page, "Begin");
    page.waitForURL(url -> url.contains("-"));
    page.navigate(address("/day"));
    page.getByText("Still reading").waitFor();
    running.clock().release();
    page.getByText("Still reading").waitFor(new Locator.WaitForOptions().setState(DETACHED));
    page.getByText("typical-ms").first().waitFor();
    assertThat(complaints).isEmpty();
  }

  private String pathOf(Page page, String name) {
    page.navigate(address("/cases"));
    String path =
        page.locator("a", new Page.LocatorOptions().setHasText(name)).first().getAttribute("href");
    return String.valueOf(path);
  }

  @Test
  void twoPeople_onTheSameField_seeEachOthersChange() {
    Page mine = clinician();
    Page theirs = signedIn(Role.LABORATORY, 1440, ColorScheme.LIGHT);
    String path = pathOf(mine, "kappa-under-limit") + "/results";
    mine.navigate(address(path));
    theirs.navigate(address(path));
    fill(mine, "CSF albumin", "21 mg/dL");
    fill(theirs, "CSF albumin", "22 mg/dL");
    click(theirs, "Save");
    click(mine, "Save");
    shows(mine, "Invented laboratory changed the same field");
    assertThat(mine.getByLabel("CSF albumin").inputValue()).isEqualTo("21 mg/dL");
    assertThat(mine.locator("[id='h-albumin.csf']").innerText()).contains("22 mg/dL");
    click(mine, "Save");
    assertThat(mine.url()).doesNotContain("results");
  }

  @Test
  void everyScreen_onAWidePage_breaksNoRuleOfAccess() {
    List<String> broken = new ArrayList<>();
    lookAtAll(1440, ColorScheme.LIGHT, broken);
    look(signedIn(Role.AUDITOR, 1440, ColorScheme.LIGHT), "/trail", broken);
    Page chief = signedIn(Role.ADMINISTRATOR, 390, ColorScheme.LIGHT);
    look(chief, "/accounts", broken);
    chief.context().clearCookies();
    look(chief, "/sign-in", broken);
    assertThat(broken).isEmpty();
    assertThat(complaints).isEmpty();
  }

  @Test
  @Tag("long")
  void everyScreen_onANarrowDarkPage_breaksNoRuleOfAccess() {
    List<String> broken = new ArrayList<>();
    lookAtAll(390, ColorScheme.DARK, broken);
    assertThat(broken).isEmpty();
    assertThat(complaints).isEmpty();
  }

  private void lookAtAll(int width, ColorScheme scheme, List<String> broken) {
    Page page = signedIn(Role.CLINICIAN, width, scheme);
    String path = pathOf(page, "typical-ms");
    List<String> screens = new ArrayList<>(OTHERS);
    STEPS.forEach(step -> screens.add(path + step));
    for (String screen : screens) {
      look(page, screen, broken);
    }
    page.context().close();
  }

  private void look(Page page, String path, List<String> broken) {
    page.navigate(address(path));
    String name = path.replaceAll("/cases/[0-9a-f-]{36}", "case").replaceAll("[^a-z]+", "-");
    int width = page.viewportSize().width;
    keepPicture(page, name + "-" + width);
    note(page, name + " at " + width, broken);
    if (width < WIDE && SAME_WHEN_NARROW.contains(name)) {
      return;
    }
    Chromium.broken(page).forEach(rule -> broken.add(name + " at " + width + ": " + rule));
  }

  private static void note(Page page, String where, List<String> broken) {
    String wider = "document.documentElement.scrollWidth > document.documentElement.clientWidth";
    if (Boolean.TRUE.equals(page.evaluate(wider))) {
      broken.add(where);
    }
  }

  /**
   * WCAG 2.2, 1.4.10 and 1.4.4: nothing scrolls sideways at 320 pixels, nor at the half of 1440,
   * which is a zoom of 200 %, nor with letters of twice their size. A table may scroll in its box.
   */
  @Tag("long")
  @Test
  void everyScreen_zoomedOrNarrow_doesNotScrollSideways() {
    List<String> broken = new ArrayList<>();
    Page page = clinician();
    String path = pathOf(page, "typical-ms");
    page.navigate(address(path + "/report"));
    click(page, "Sign as");
    List<String> screens = new ArrayList<>(OTHERS);
    screens.addAll(List.of("/facts", "/none"));
    STEPS.forEach(step -> screens.add(path + step));
    screens.add(path + "/report/1");
    screens.add(pathOf(page, "repeat-second") + "/compare");
    screens.add(pathOf(page, "plan-anticoagulated") + "/tubes");
    screens.forEach(screen -> zoom(page, screen, broken));
    Page chief = signedIn(Role.ADMINISTRATOR, 1440, ColorScheme.LIGHT);
    zoom(chief, "/accounts", broken);
    zoom(signedIn(Role.AUDITOR, 1440, ColorScheme.LIGHT), "/trail", broken);
    chief.context().clearCookies();
    zoom(chief, "/sign-in", broken);
    assertThat(broken).isEmpty();
  }

  private void zoom(Page page, String path, List<String> broken) {
    page.setViewportSize(WIDE, 900);
    page.navigate(address(path));
    String name = path.replaceAll("[0-9a-f-]{36}", "");
    for (int width : new int[] {1024, WIDE / 2, 390, 320}) {
      page.setViewportSize(width, 900);
      note(page, name + " at " + width, broken);
      if (path.endsWith("/results") && isPairApart(page)) {
        broken.add(name + " at " + width + ": CSF and serum of one analyte apart");
      }
    }
    page.evaluate("document.documentElement.style.fontSize = '200%'");
    for (int width : new int[] {WIDE, WIDE / 2}) {
      page.setViewportSize(width, 900);
      note(page, name + " at " + width + " with letters of twice their size", broken);
      keepPicture(page, name.replaceAll("[^a-z0-9]+", "-") + "-large-" + width);
    }
  }

  /** Whether the two fluids of one analyte stand in different lines. */
  private static boolean isPairApart(Page page) {
    return page.locator("[id='f-albumin.csf']").boundingBox().y
        != page.locator("[id='f-albumin.serum']").boundingBox().y;
  }

  /** Pictures are kept when a folder is named, to be looked at. */
  private static void keepPicture(Page page, String name) {
    String folder = System.getProperty("cistern.pictures", "");
    if (!folder.isEmpty()) {
      page.screenshot(
          new Page.ScreenshotOptions().setPath(Path.of(folder, name + ".png")).setFullPage(true));
    }
  }
}
