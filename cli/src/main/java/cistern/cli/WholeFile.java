package cistern.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A file that stands in its place only when it is whole: written beside it, then moved. */
final class WholeFile {

  private WholeFile() {}

  /** Where a file is written until it is whole. */
  static Path part(Path file) {
    return file.resolveSibling("." + file.getFileName() + ".part");
  }

  /** Moves the part to its place. */
  static void finish(Path file) throws IOException {
    Files.move(part(file), file, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Writes all of a file. */
  static void write(Path file, byte[] content) throws IOException {
    Files.write(part(file), content);
    finish(file);
  }
}
