package cistern.clinic.launch;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** A real browser without a window. */
final class Chromium implements AutoCloseable {

  /** WCAG 2.2, levels A and AA. */
  private static final List<String> ACCESS =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

  /** How long a slow machine is waited for, in milliseconds. */
  private static final double PATIENCE = 120_000;

  private final Playwright playwright =
      Playwright.create(
          new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
  private final Browser browser =
      playwright
          .chromium()
          .launch(
              new BrowserType.LaunchOptions()
                  .setExecutablePath(Path.of("/usr/bin/chromium"))
                  .setArgs(List.of("--no-sandbox", "--disable-gpu", "--no-first-run")));

  /** A page of a width in a context of its own. */
  Page page(int width, ColorScheme scheme) {
    return page(
        new Browser.NewContextOptions()
            .setViewportSize(width, 900)
            .setColorScheme(scheme)
            .setTimezoneId("UTC"));
  }

  Page page(Browser.NewContextOptions options) {
    var context = browser.newContext(options);
    context.setDefaultTimeout(PATIENCE);
    return context.newPage();
  }

  /** Every rule of access that a page breaks, with the first place. */
  static List<?> broken(Page page) {
    return broken(page, Map.of("runOnly", ACCESS, "resultTypes", List.of("violations")));
  }

  /** The same of every rule that the checker has. */
  static List<?> brokenOfAll(Page page) {
    return broken(page, Map.of("resultTypes", List.of("violations")));
  }

  private static List<?> broken(Page page, Map<String, Object> options) {
    page.evaluate(AxeBuilder.getAxeScript());
    return (List<?>)
        page.evaluate(
            "async options => (await axe.run(document, options)).violations"
                + ".map(rule => rule.id + ' ' + rule.nodes[0].html)",
            options);
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
