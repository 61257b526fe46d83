package cistern.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * One stream for all results; several JSON results make an array. Where one input is named, its
 * first result waits until it is known whether another follows.
 */
final class ToStream implements Destination {

  private final OutputStream out;
  private final Rendering rendering;
  private final boolean isSeveral;
  private final ByteArrayOutputStream waiting = new ByteArrayOutputStream();
  private int count;

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
  public boolean isFull() {
    return count > 0 && !rendering.isStackable();
  }

  @Override
  public void accept(RenderedResult result) throws IOException {
    try {
      count++;
      if (rendering.isListed() && !isSeveral && count == 1) {
        result.writeTo(waiting);
        return;
      }
      write(before());
      waiting.writeTo(out);
      write(waiting.size() > 0 ? ",\n" : "");
      waiting.reset();
      result.writeTo(out);
    } catch (IOException e) {
      throw new NotWritten("Standard output", e);
    }
  }

  private String before() {
    if (!rendering.isListed()) {
      return count == 1 ? rendering.heading() : rendering.separator();
    }
    return count == 1 || waiting.size() > 0 ? "[\n" : ",\n";
  }

  @Override
  public void close() {
    try {
      boolean isArray = rendering.isListed() && (isSeveral ? count > 0 : count > 1);
      waiting.writeTo(out);
      waiting.reset();
      write(isArray ? "]\n" : "");
      out.flush();
    } catch (IOException e) {
      throw new NotWritten("Standard output", e);
    }
  }

  private void write(String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
  }
}
