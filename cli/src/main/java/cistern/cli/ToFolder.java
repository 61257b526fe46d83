package cistern.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;

/** A file for each result, named after the work-up's id. */
final class ToFolder implements Destination {

  private final Path folder;
  private final Rendering rendering;
  private final Set<String> written = new HashSet<>();

  ToFolder(Path folder, Rendering rendering) {
    this.folder = folder;
    this.rendering = rendering;
  }

  @Override
  public boolean isTaken(String id) {
    return written.contains(id);
  }

  @Override
  public boolean isFull() {
    return false;
  }

  @Override
  public void accept(RenderedResult result) throws IOException {
    String id = result.id();
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new NotWritten(folder.toString(), e);
    }
    Path file = folder.resolve(id + "." + rendering.extension());
    ToFile whole = ToFile.of(file, rendering, false);
    whole.accept(result);
    whole.close();
    written.add(id);
  }

  @Override
  public void close() {
    // Each file is already whole.
  }
}
