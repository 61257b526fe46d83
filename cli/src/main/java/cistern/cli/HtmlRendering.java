package cistern.cli;

import cistern.report.page.Audience;
import cistern.report.page.Page;
import java.nio.charset.StandardCharsets;

/** A page for a screen or a printer. */
final class HtmlRendering implements Rendering {

  private final Page page;
  private final Audience audience;

  HtmlRendering(Page page, Audience audience) {
    this.page = page;
    this.audience = audience;
  }

  @Override
  public String extension() {
    return "html";
  }

  @Override
  public boolean isStackable() {
    return false;
  }

  @Override
  public byte[] toBytes(Result result) {
    return page.toHtml(result.interpretation(), audience).getBytes(StandardCharsets.UTF_8);
  }
}
