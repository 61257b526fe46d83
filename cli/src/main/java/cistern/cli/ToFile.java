package cistern.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** One file for all results, moved to its place when it is whole; none when there is no result. */
final class ToFile implements Destination {

  private final Path file;
  private final Path part;
  private final OutputStream out;
  private final ToStream stream;
  private boolean isStarted;

  private ToFile(Path file, Path part, OutputStream out, ToStream stream) {
    this.file = file;
    this.part = part;
    this.out = out;
    this.stream = stream;
  }

  static ToFile of(Path file, Rendering rendering, boolean isSeveral) {
    Path part = WholeFile.part(file);
    try {
      OutputStream out = new BufferedOutputStream(Files.newOutputStream(part));
      return new ToFile(file, part, out, new ToStream(out, rendering, isSeveral));
    } catch (IOException e) {
      throw new NotWritten(file.toString(), e);
    }
  }

  @Override
  public boolean isTaken(String id) {
    return false;
  }

  @Override
  public boolean isFull() {
    return stream.isFull();
  }

  @Override
  public void accept(RenderedResult result) throws IOException {
    boolean isWhole = false;
    try {
      stream.accept(result);
      isWhole = true;
    } finally {
      if (!isWhole) {
        out.close();
        Files.deleteIfExists(part);
      }
    }
    isStarted = true;
  }

  @Override
  public void close() {
    try {
      stream.close();
      out.close();
      if (isStarted) {
        WholeFile.finish(file);
      } else {
        Files.delete(part);
      }
    } catch (IOException e) {
      throw new NotWritten(file.toString(), e);
    }
  }
}
