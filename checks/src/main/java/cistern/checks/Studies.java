package cistern.checks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The section of the page that only the long run rewrites: what the studies found, when, and on
 * which sources. It carries a fingerprint of each module's {@code src/main}, so that a later run
 * can tell that the results are older than the code they cover.
 *
 * @param text the section as it stands on the page, without its heading
 */
record Studies(String text) {

  static final Studies NONE = new Studies("\nNot run yet: `./check --long` fills this section.\n");

  private static final Pattern COVERED = Pattern.compile("(?m)^- `([a-z-]+)` ([0-9a-f]{16})$");

  /** The studies of a run that has just ended. */
  static Studies of(Path root, CheckTable table, String occasion) throws IOException {
    StringBuilder text = new StringBuilder("\n").append(occasion).append("\n");
    text.append(table.toMarkdown());
    text.append("\nSources covered (module, fingerprint of its `src/main`):\n\n");
    for (var module : fingerprints(root).entrySet()) {
      text.append("- `%s` %s\n".formatted(module.getKey(), module.getValue()));
    }
    return new Studies(text.toString());
  }

  /** The modules whose sources are no longer those that the studies covered. */
  List<String> outdated(Path root) throws IOException {
    SortedMap<String, String> now = fingerprints(root);
    List<String> changed = new ArrayList<>();
    Matcher covered = COVERED.matcher(text);
    while (covered.find()) {
      if (!covered.group(2).equals(now.get(covered.group(1)))) {
        changed.add(covered.group(1));
      }
    }
    return List.copyOf(changed);
  }

  private static SortedMap<String, String> fingerprints(Path root) throws IOException {
    SortedMap<String, String> found = new TreeMap<>();
    for (Path module : CheckTable.modulesOf(root)) {
      Path sources = module.resolve("src/main");
      if (Files.isDirectory(sources)) {
        found.put(module.getFileName().toString(), Fingerprint.of(sources));
      }
    }
    return found;
  }
}
