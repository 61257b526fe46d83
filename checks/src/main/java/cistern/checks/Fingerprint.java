package cistern.checks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** The first 16 hexadecimal digits of a SHA-256: enough to tell two versions of a source apart. */
final class Fingerprint {

  private static final int DIGITS = 16;

  private Fingerprint() {}

  static String of(String text) {
    MessageDigest digest = sha256();
    digest.update(text.getBytes(StandardCharsets.UTF_8));
    return toText(digest);
  }

  /**
   * The fingerprint of every file under a folder, names and contents; of nothing when it is not.
   */
  static String of(Path folder) throws IOException {
    MessageDigest digest = sha256();
    for (Path file : filesOf(folder)) {
      String name = folder.relativize(file).toString().replace('\\', '/');
      digest.update(name.getBytes(StandardCharsets.UTF_8));
      digest.update((byte) 0);
      digest.update(Files.readAllBytes(file));
      digest.update((byte) 0);
    }
    return toText(digest);
  }

  private static List<Path> filesOf(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static String toText(MessageDigest digest) {
    return HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
