package cistern.clinic.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Folders that only their owner may enter, and files that only their owner may read. */
final class Private {

  private static final Set<PosixFilePermission> FOLDER =
      PosixFilePermissions.fromString("rwx------");
  private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");

  private Private() {}

  /** A folder: made when it is not there, closed to others when nothing is in it. */
  static void folder(Path folder) throws IOException {
    if (Files.notExists(folder)) {
      Files.createDirectories(folder, attributes(folder, FOLDER));
    }
    if (isPosix(folder) && isEmpty(folder)) {
      Files.setPosixFilePermissions(folder, FOLDER);
    }
  }

  private static boolean isEmpty(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isEmpty();
    }
  }

  /** An empty file, when it is not there. */
  static void file(Path file) throws IOException {
    if (Files.notExists(file)) {
      Files.createFile(file, attributes(file, FILE));
    }
  }

  /** Closes a file and those that the engine keeps beside it to others. */
  static void close(Path file) throws IOException {
    for (Path each : beside(file)) {
      if (isPosix(each) && Files.exists(each) && Files.isWritable(each)) {
        Files.setPosixFilePermissions(each, FILE);
      }
    }
  }

  /** The file itself, its log of changes and the index of that. */
  static List<Path> beside(Path file) {
    return Stream.of("", "-wal", "-shm")
        .map(end -> file.resolveSibling(file.getFileName() + end))
        .toList();
  }

  private static boolean isPosix(Path path) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  private static FileAttribute<?>[] attributes(Path path, Set<PosixFilePermission> permissions) {
    return isPosix(path)
        ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(permissions)}
        : new FileAttribute<?>[0];
  }
}
