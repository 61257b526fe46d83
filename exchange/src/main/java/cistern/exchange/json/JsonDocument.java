package cistern.exchange.json;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Reading one JSON document, whatever the file turns out to be. */
public final class JsonDocument {

  private JsonDocument() {}

  /** The object in a file; empty, with at least one problem noted, when there is none. */
  public static Optional<Json.Structure> read(
      Path file, InputLimits limits, InputProblems problems) {
    Optional<String> obstacle = obstacle(file);
    if (obstacle.isPresent()) {
      problems.add(Place.WHOLE, InputTrouble.UNREADABLE, obstacle.get());
      return Optional.empty();
    }
    try (InputStream in = Files.newInputStream(file)) {
      return read(in, limits, problems);
    } catch (IOException e) {
      problems.add(Place.WHOLE, InputTrouble.UNREADABLE, "the system refuses it");
      return Optional.empty();
    }
  }

  private static Optional<String> obstacle(Path file) {
    if (!Files.exists(file)) {
      return Optional.of("there is no such file");
    }
    if (Files.isDirectory(file)) {
      return Optional.of("it is a folder");
    }
    return Files.isReadable(file) ? Optional.empty() : Optional.of("reading it is not allowed");
  }

  /** The object in a stream; empty, with at least one problem noted, when there is none. */
  public static Optional<Json.Structure> read(
      InputStream in, InputLimits limits, InputProblems problems) {
    byte[] bytes;
    try {
      bytes = in.readNBytes(limits.bytes() + 1);
    } catch (IOException e) {
      problems.add(Place.WHOLE, InputTrouble.UNREADABLE, "reading stopped before its end");
      return Optional.empty();
    }
    if (bytes.length > limits.bytes()) {
      problems.add(Place.WHOLE, InputTrouble.TOO_LARGE, limits.mebibytes());
      return Optional.empty();
    }
    return Utf8.read(bytes, problems)
        .flatMap(text -> JsonTree.read(text, limits, problems))
        .flatMap(root -> structure(root, problems));
  }

  private static Optional<Json.Structure> structure(Json root, InputProblems problems) {
    if (root instanceof Json.Structure structure) {
      return Optional.of(structure);
    }
    problems.add(Place.WHOLE, InputTrouble.NOT_AN_OBJECT, root.kind());
    return Optional.empty();
  }
}
