package cistern.gel.net;

import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtLoggingLevel;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * What runs the nets. Its native part is unpacked to a folder to be loaded, which is removed as
 * soon as it is: a process that is ended by a signal would otherwise leave it behind every time.
 */
final class NetRuntime {
  private static final String PLACE = "onnxruntime.native.path";
  private static final List<String> PARTS = List.of("onnxruntime", "onnxruntime4j_jni");

  private NetRuntime() {}

  /** Starts it. */
  static OrtEnvironment started() {
    try {
      Path folder = Files.createTempDirectory("cistern-nets");
      try {
        unpack(folder);
        System.setProperty(PLACE, folder.toString());
        return OrtEnvironment.getEnvironment(OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR, "cistern");
      } finally {
        System.clearProperty(PLACE);
        remove(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Unpacks what this platform needs; of a part that is not at hand the library says so itself. */
  private static void unpack(Path folder) throws IOException {
    for (String part : PARTS) {
      String file = System.mapLibraryName(part);
      String name = "/ai/onnxruntime/native/" + platform() + "/" + file;
      try (InputStream packed = OrtEnvironment.class.getResourceAsStream(name)) {
        if (packed != null) {
          Files.copy(packed, folder.resolve(file));
        }
      }
    }
  }

  private static String platform() {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    String name = system.startsWith("mac") ? "osx" : system.startsWith("win") ? "win" : "linux";
    return name + (System.getProperty("os.arch").equals("aarch64") ? "-aarch64" : "-x64");
  }

  /** Where a loaded file can't be removed, it goes when the process ends. */
  private static void remove(Path folder) throws IOException {
    for (String part : PARTS) {
      Path file = folder.resolve(System.mapLibraryName(part));
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        folder.toFile().deleteOnExit();
        file.toFile().deleteOnExit();
        return;
      }
    }
    Files.deleteIfExists(folder);
  }
}
