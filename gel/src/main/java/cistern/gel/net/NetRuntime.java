package cistern.gel.net;

import ai.onnxruntime.OrtEnvironment;
import ai.onnxruntime.OrtLoggingLevel;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What runs the nets. Its native part is unpacked to be loaded: into the folder that the launcher
 * names, once for all runs, or else into one that is removed as soon as it is loaded, since a
 * process that is ended by a signal would leave it behind every time.
 */
final class NetRuntime {
  private static final String PLACE = "onnxruntime.native.path";
  private static final List<String> PARTS = List.of("onnxruntime", "onnxruntime4j_jni");

  /** The system property that names the folder of a launcher. */
  private static final String KEPT = "cistern.net-runtime";

  private NetRuntime() {}

  /** Starts it. */
  static OrtEnvironment started() {
    Optional<Path> kept = Optional.ofNullable(System.getProperty(KEPT)).map(Path::of);
    return kept.filter(NetRuntime::isUnpacked).map(NetRuntime::loaded).orElseGet(NetRuntime::once);
  }

  /** Whether the parts lie in a folder, where need be after they were put there, all at once. */
  static boolean isUnpacked(Path folder) {
    if (hasParts(folder)) {
      return true;
    }
    try {
      Path part = Files.createTempDirectory(folder.resolveSibling(""), "unpacking");
      try {
        unpack(part);
        Files.move(part, folder, StandardCopyOption.ATOMIC_MOVE);
      } finally {
        remove(part);
      }
    } catch (IOException e) {
      // Another process may have put them there meanwhile; else they are unpacked for this run.
    }
    return hasParts(folder);
  }

  private static boolean hasParts(Path folder) {
    return PARTS.stream()
        .map(System::mapLibraryName)
        .map(folder::resolve)
        .allMatch(Files::isReadable);
  }

  private static OrtEnvironment loaded(Path folder) {
    System.setProperty(PLACE, folder.toString());
    try {
      return OrtEnvironment.getEnvironment(OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR, "cistern");
    } finally {
      System.clearProperty(PLACE);
    }
  }

  private static OrtEnvironment once() {
    try {
      Path folder = Files.createTempDirectory("cistern-nets");
      try {
        unpack(folder);
        return loaded(folder);
      } finally {
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
