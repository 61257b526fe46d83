package cistern.cli;

import java.io.IOException;

/** A file or stream could not be written. */
final class NotWritten extends RuntimeException {

  private static final long serialVersionUID = 1L;

  NotWritten(String where, IOException cause) {
    super(
        "%s could not be written (%s). Nothing half-written was left there."
            .formatted(where, cause.getClass().getSimpleName()),
        cause);
  }
}
