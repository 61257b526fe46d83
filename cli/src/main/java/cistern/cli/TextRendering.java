package cistern.cli;

import cistern.interpretation.Interpretation;
import cistern.report.text.InterpretationText;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Plain text for a terminal. */
final class TextRendering implements Rendering {

  private final InterpretationText text = InterpretationText.of(Cistern.software());

  @Override
  public String extension() {
    return "txt";
  }

  @Override
  public boolean isStackable() {
    return true;
  }

  @Override
  public void write(Interpretation interpretation, OutputStream out) throws IOException {
    out.write(text.write(interpretation).getBytes(StandardCharsets.UTF_8));
  }
}
