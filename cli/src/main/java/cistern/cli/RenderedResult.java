package cistern.cli;

import java.io.IOException;
import java.io.OutputStream;

/** A result that can be written as it is. */
final class RenderedResult {

  private final String id;
  private final byte[] whole;

  /**
   * A result that can be written as it is.
   *
   * @param id the id of the work-up
   * @param whole every byte, kept and not copied
   */
  RenderedResult(String id, byte[] whole) {
    this.id = id;
    this.whole = whole;
  }

  String id() {
    return id;
  }

  void writeTo(OutputStream out) throws IOException {
    out.write(whole);
  }
}
