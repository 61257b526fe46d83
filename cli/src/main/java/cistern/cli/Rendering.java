package cistern.cli;

import java.io.IOException;

/** One way to write an interpretation. */
interface Rendering {

  /** The ending of a file's name, without the dot. */
  String extension();

  /** Whether several results can stand one after another on one stream. */
  boolean isStackable();

  /** Whether several results on one stream are items of one JSON list. */
  default boolean isListed() {
    return false;
  }

  /** What stands between two results on one stream. */
  default String separator() {
    return "\n";
  }

  /** What stands before the first result on a stream: the heading of a table. */
  default String heading() {
    return "";
  }

  /** One interpretation, ready to be written; several may be made at the same time. */
  byte[] toBytes(Result result) throws IOException;
}
