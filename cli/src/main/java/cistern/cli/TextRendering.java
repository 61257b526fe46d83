package cistern.cli;

import cistern.report.page.Audience;
import cistern.report.page.Page;
import java.io.IOException;
import java.io.OutputStream;
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
  public void write(Result result, OutputStream out) throws IOException {
    String text = page.toPlainText(result.interpretation(), audience);
    out.write(text.getBytes(StandardCharsets.UTF_8));
  }
}
