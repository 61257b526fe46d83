package cistern.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** One stream for all results; several JSON results make an array. */
final class ToStream implements Destination {

  private final OutputStream out;
  private final Rendering rendering;
  private final boolean isSeveral;
  private boolean isStarted;

  ToStream(OutputStream out, Rendering rendering, boolean isSeveral) {
    this.out = out;
    this.rendering = rendering;
    this.isSeveral = isSeveral;
  }

  @Override
  public boolean isTaken(String id) {
    return false;
  }

  @Override
  public void accept(Result result) throws IOException {
    try {
      if (isSeveral) {
        write(isArray() ? (isStarted ? ",\n" : "[\n") : (isStarted ? "\n" : ""));
      }
      isStarted = true;
      rendering.write(result, out);
    } catch (IOException e) {
      throw new NotWritten("Standard output", e);
    }
  }

  @Override
  public void close() {
    try {
      if (isSeveral && isStarted && isArray()) {
        write("]\n");
      }
      out.flush();
    } catch (IOException e) {
      throw new NotWritten("Standard output", e);
    }
  }

  private boolean isArray() {
    return rendering instanceof JsonRendering;
  }

  private void write(String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
  }
}
