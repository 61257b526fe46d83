package cistern.cli;

import java.io.IOException;

/** Where results go, one after another. */
interface Destination {

  /** Whether a result under this id has already been written here and would be lost. */
  boolean isTaken(String id);

  /** Whether no further result can stand here. */
  boolean isFull();

  /** Writes one result. */
  void accept(RenderedResult result) throws IOException;

  /** Ends what several results share. */
  void close() throws IOException;
}
