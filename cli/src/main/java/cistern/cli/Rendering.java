package cistern.cli;

import java.io.IOException;
import java.io.OutputStream;

/** One way to write an interpretation. */
interface Rendering {

  /** The ending of a file's name, without the dot. */
  String extension();

  /** Whether several results can stand one after another on one stream. */
  boolean isStackable();

  /** Writes one interpretation onto a stream that stays open. */
  void write(Result result, OutputStream out) throws IOException;
}
