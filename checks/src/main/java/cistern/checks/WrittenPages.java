package cistern.checks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Pages of {@code docs/} that tests write whole into {@code target/pages} of their module: the one
 * that is committed is the one that this run's tests wrote.
 */
final class WrittenPages {

  private final Path root;
  private final PrintStream out;

  WrittenPages(Path root, PrintStream out) {
    this.root = root;
    this.out = out;
  }

  /** Whether every page that a test wrote is the one that is committed. */
  boolean check() throws IOException {
    boolean same = true;
    for (Path written : written()) {
      Path committed = committed(written);
      if (!Files.exists(committed)
          || !Files.readString(committed).equals(Files.readString(written))) {
        out.println(
            root.relativize(committed)
                + " is not what this run's tests give: ./check --refresh rewrites it.");
        same = false;
      }
    }
    return same;
  }

  /** Takes over what the tests wrote. */
  void refresh() throws IOException {
    for (Path written : written()) {
      Files.writeString(committed(written), Files.readString(written));
      out.println(root.relativize(committed(written)) + " rewritten.");
    }
  }

  private Path committed(Path written) {
    return root.resolve("docs").resolve(written.getFileName().toString());
  }

  private List<Path> written() throws IOException {
    List<Path> all = new ArrayList<>();
    for (Path module : CheckTable.modulesOf(root)) {
      Path folder = module.resolve("target/pages");
      if (Files.isDirectory(folder)) {
        try (Stream<Path> files = Files.list(folder)) {
          files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(all::add);
        }
      }
    }
    return all;
  }
}
