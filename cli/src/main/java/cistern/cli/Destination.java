package cistern.cli;

import cistern.interpretation.Interpretation;
import java.io.IOException;

/** Where results go, one after another. */
interface Destination {

  /** Whether a result under this id has already been written here and would be lost. */
  boolean isTaken(String id);

  /** Writes one result. */
  void accept(Interpretation interpretation) throws IOException;

  /** Ends what several results share. */
  void close() throws IOException;
}
