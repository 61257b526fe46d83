package cistern.clinic.launch;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** A gel from its file to the interpretation in a real browser. */
@TestInstance(Lifecycle.PER_CLASS)
class GelBrowserTest {

  private static final Path PICTURE =
      Path.of(System.getProperty("cistern.root", ".."), "examples", "gel-local.png");

  /** As the example's own work-up names them; its pair 1 was drawn with thirteen bands. */
  private static final String LANES = "csf,serum,csf,serum,control,control";

  private final Running running = Running.on(Engines.folder());

  @AfterAll
  void stop() {
    assertThat(StoreVerification.check(running.store()).faults()).isEmpty();
    running.close();
  }

  @Test
  void gel_fromItsFileToTheInterpretation_isReadEditedDrawnAndConfirmed() throws IOException {
    try (Chromium browser = new Chromium()) {
      Page page = page(browser, 1440, ColorScheme.LIGHT);
      String path =
          Caller.place(running.signedIn(Role.CLINICIAN).post("/cases", Map.of("name", "with-gel")));
      send(page, path);
      strike(page);
      draw(page);
      place(page);
      Page narrow = page(browser, 390, ColorScheme.DARK);
      narrow.navigate(address(path + "/gel"));
      assertThat(Chromium.broken(narrow)).isEmpty();
      page.getByLabel("Keep C+1:").uncheck();
      page.locator(".kept-count").getByText("11").waitFor();
      assertThat(page.locator(".mark.struck").count()).isEqualTo(3);
      press(page, "Confirm as Invented clinician");
      page.getByText("Confirmed by Invented clinician").first().waitFor();
      assertThat(page.getByLabel("Keep C+1:").count()).isZero();
      page.navigate(address(path + "/says"));
      assertThat(page.locator("main").innerText()).contains("11 CSF-only");
    }
  }

  private void send(Page page, String path) throws IOException {
    page.navigate(address(path + "/gel"));
    assertThat(Chromium.broken(page)).isEmpty();
    page.evaluate("document.querySelector('form.upload').dispatchEvent(new Event('submit'))");
    assertThat(page.getByText("this takes some seconds").isVisible()).isTrue();
    page.getByLabel("Picture of the gel")
        .setInputFiles(new FilePayload("any.png", "image/png", Files.readAllBytes(PICTURE)));
    page.getByLabel("Lanes from left to right").fill(LANES);
    page.getByLabel("Which pair is this person's").fill("1");
    press(page, "Read the picture");
  }

  /** One band by keyboard, one on the picture. */
  private static void strike(Page page) {
    Locator count = page.locator(".kept-count").first();
    assertThat(count.innerText()).isEqualTo("13");
    page.getByLabel("Keep C1:").focus();
    page.keyboard().press("Space");
    page.getByText("your counts stand").waitFor();
    assertThat(count.innerText()).isEqualTo("12");
    page.locator("[data-band='2-1'] polygon").click();
    page.locator(".kept-count").getByText("11").waitFor();
    assertThat(page.locator(".mark.struck").count()).isEqualTo(2);
  }

  /** A press in a lane draws a band there, and what was struck stays so. */
  private static void draw(Page page) {
    Locator lane = page.locator("[data-lane='2']");
    BoundingBox pressed = lane.boundingBox();
    lane.click(new Locator.ClickOptions().setPosition(pressed.width / 2, pressed.height / 2));
    page.getByLabel("Keep C+1:").waitFor();
    assertThat(page.locator(".kept-count").first().innerText()).isEqualTo("12");
    assertThat(page.locator(".mark.struck").count()).isEqualTo(2);
    BoundingBox drawn = page.locator("[data-band='2-13'] polygon").boundingBox();
    assertThat(drawn.y + drawn.height / 2 - lane.boundingBox().y)
        .isCloseTo(pressed.height / 2, Offset.offset(2.0));
    assertThat(Chromium.broken(page)).isEmpty();
  }

  /** Lanes moved by keys, by mouse and by an edge are read again in place; Ctrl Z takes it back. */
  private static void place(Page page) {
    page.evaluate("window.unloaded = true");
    String lane = ".gel-whole [data-place='2']";
    double before = Double.parseDouble(page.locator("#lane-x-2").inputValue());
    page.locator(lane).focus();
    page.keyboard().press("ArrowRight");
    page.keyboard().press("Shift+ArrowLeft");
    placed(page, 1);
    assertThat(page.locator("#lane-x-2").inputValue()).isEqualTo("%.1f".formatted(before - 9));
    assertThat(page.locator(".gel-whole [data-place]:focus").count()).isEqualTo(1);
    drag(page, lane + " .grab", 9);
    placed(page, 2);
    double width = Double.parseDouble(page.locator("#lane-width-2").inputValue());
    drag(page, lane + " .reach[data-edge='1']", 8);
    placed(page, 3);
    assertThat(Double.parseDouble(page.locator("#lane-width-2").inputValue()))
        .isGreaterThan(width + 4);
    page.locator(lane).focus();
    page.keyboard().press("Control+z");
    placed(page, 2);
    assertThat(page.locator("#gel-said").innerText())
        .startsWith("Read again: 12 only in the fluid");
    assertThat(page.locator(".mark.struck").count())
        .as("struck, and not carried over")
        .isEqualTo(2);
    assertThat(Chromium.broken(page)).isEmpty();
    assertThat(page.evaluate("window.unloaded")).isEqualTo(true);
    press(page, "Undo the last placing");
    placed(page, 1);
    press(page, "Undo the last placing");
    placed(page, 0);
  }

  /** Waits until the lanes of the form were placed so many times. */
  private static void placed(Page page, int times) {
    page.waitForFunction(
        "times => document.querySelectorAll('[name=placed]').length === times"
            + " && document.getElementById('gel-said').textContent.startsWith('Read again')",
        times);
  }

  private static void drag(Page page, String what, double right) {
    page.locator(what).scrollIntoViewIfNeeded();
    BoundingBox box = page.locator(what).boundingBox();
    double x = box.x + box.width / 2;
    double y = box.y + box.height / 2;
    page.mouse().move(x, y);
    page.mouse().down();
    page.mouse().move(x + right, y);
    page.mouse().up();
  }

  private Page page(Chromium browser, int width, ColorScheme scheme) {
    Page page = browser.page(width, scheme);
    running.signIn(page, Role.CLINICIAN);
    return page;
  }

  private String address(String path) {
    return "http://127.0.0.1:" + running.clinic().port() + path;
  }

  private static void press(Page page, String button) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button)).click();
  }
}
