package cistern.cli;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.text.InterpretationText;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Plain text for a terminal. */
final class TextRendering implements Rendering {

  private final InterpretationText text = InterpretationText.of(Cistern.software());
  private final Facts facts;
  private final Audience audience;

  TextRendering(Facts facts, Audience audience) {
    this.facts = facts;
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
    out.write(text(result.interpretation()).getBytes(StandardCharsets.UTF_8));
  }

  private String text(Interpretation interpretation) {
    return switch (audience) {
      case CLINICIAN -> text.write(interpretation);
      case REFERRER, PATIENT ->
          Page.of(Cistern.software(), facts).toPlainText(interpretation, audience);
    };
  }
}
