package cistern.cli;

import cistern.report.page.Audience;
import cistern.report.page.Page;
import java.nio.charset.StandardCharsets;

/** Plain text for a terminal, or for a chart. */
final class TextRendering implements Rendering {

  private final Page page;
  private final Audience audience;

  TextRendering(Page page, Audience audience) {
    this.page = page;
    this.audience = audience;
  }

  @Override
  public String extension() {
    return "txt";
  }

  @Override
  public boolean isStackable() {
    return true;
  }

  @Override
  public byte[] toBytes(Result result) {
    String text = page.toPlainText(result.interpretation(), audience);
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
