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
import com.microsoft.playwright.options.Media;
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
      view(page);
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

  /** The picture larger and clearer by keys, buttons and wheel; it changes nothing of the case. */
  private static void view(Page page) {
    Locator band = page.locator(".mark[data-band='2-6'] polygon");
    Locator peak = page.locator(".peak[data-band='2-6'] circle");
    double wide = page.locator(".gel-frame image").boundingBox().width;
    double high = band.boundingBox().height;
    page.keyboard().press("+");
    page.keyboard().press("+");
    assertThat(page.locator("#gel-zoom").innerText()).isEqualTo("225 %");
    BoundingBox picture = page.locator(".gel-frame image").boundingBox();
    assertThat(picture.width).isCloseTo(2.25 * wide, Offset.offset(1.0));
    assertThat(band.boundingBox().height).as("a mark stays small").isLessThan(1.2 * high);
    assertThat(middle(peak)).isCloseTo(middle(band), Offset.offset(1.0));
    assertThat(page.evaluate("document.documentElement.scrollWidth <= innerWidth")).isEqualTo(true);
    page.locator("#gel-contrast").fill("200");
    page.keyboard().press("i");
    assertThat(filter(page)).contains("contrast(2)").contains("invert(1)");
    assertThat(page.evaluate("getComputedStyle(document.querySelector('.mark')).filter"))
        .isEqualTo("none");
    page.reload();
    assertThat(page.locator("#gel-zoom").innerText()).isEqualTo("225 %");
    assertThat(filter(page)).contains("contrast(2)").contains("invert(1)");
    assertThat(Chromium.broken(page)).isEmpty();
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    assertThat(filter(page)).isEqualTo("none");
    assertThat(page.locator(".gel-view").isVisible()).isFalse();
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
    page.locator(".gel-frame").hover();
    page.keyboard().down("Control");
    page.mouse().wheel(0, -300);
    page.keyboard().up("Control");
    page.waitForFunction("parseInt(document.getElementById('gel-zoom').textContent) > 400");
    press(page, "As it was");
    assertThat(page.locator("#gel-zoom").innerText()).isEqualTo("100 %");
    assertThat(filter(page)).contains("contrast(1)").contains("invert(0)");
  }

  private static double middle(Locator shape) {
    BoundingBox box = shape.boundingBox();
    return box.y + box.height / 2;
  }

  private static String filter(Page page) {
    return (String)
        page.evaluate("getComputedStyle(document.querySelector('.gel-frame image')).filter");
  }

  /** A press in a lane draws a band there, and what was struck stays so; the page is not left. */
  private static void draw(Page page) {
    page.evaluate("window.unloaded = true");
    Locator lane = page.locator("[data-lane='2']");
    BoundingBox pressed = lane.boundingBox();
    lane.click(new Locator.ClickOptions().setPosition(pressed.width / 2, pressed.height / 2));
    page.getByLabel("Keep C+1:").waitFor();
    assertThat(page.locator(".kept-count").first().innerText()).isEqualTo("12");
    assertThat(page.locator(".mark.struck").count()).isEqualTo(2);
    BoundingBox drawn = page.locator("[data-band='2-13'] polygon").boundingBox();
    assertThat(drawn.y + drawn.height / 2 - lane.boundingBox().y)
        .isCloseTo(pressed.height / 2, Offset.offset(2.0));
    assertThat(page.evaluate("window.unloaded")).isEqualTo(true);
    assertThat(page.locator("#keep-2-13:focus").count()).isEqualTo(1);
    page.keyboard().press("ArrowUp");
    assertThat(page.locator("#keep-2-12:focus").count()).isEqualTo(1);
    assertThat(page.locator("#pattern-chances").innerText())
        .contains("Chance as you keep the bands");
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
    undoWhileItIsRead(page, lane);
    press(page, "Undo the last placing");
    placed(page, 1);
    press(page, "Undo the last placing");
    placed(page, 0);
  }

  /** Of what is still being read the placing itself is undone, and not the one before it. */
  private static void undoWhileItIsRead(Page page, String lane) {
    page.route(
        "**/gel/lanes",
        route -> {
          page.waitForTimeout(1000);
          route.resume();
        });
    drag(page, lane + " .grab", 5);
    page.keyboard().press("Control+z");
    page.waitForFunction("document.querySelectorAll('[name=undone]').length === 1");
    placed(page, 2);
    page.unroute("**/gel/lanes");
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
