package cistern.checks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Whether no library has a weakness that this repository's list knows, and whether the page of
 * third-party notices names every library with its licence. It needs no network.
 */
public final class LibraryGate {

  private LibraryGate() {}

  /**
   * Runs it: the bill of materials, the list of weaknesses, the page of notices, and {@code write}
   * when the page is to be written anew.
   */
  public static void main(String[] arguments) throws IOException {
    Path page = Path.of(arguments[2]);
    List<Component> components = Component.read(Path.of(arguments[0]));
    if (arguments.length > 3) {
      Files.writeString(page, notices(components), StandardCharsets.UTF_8);
    }
    List<String> faults =
        faults(
            components,
            KnownWeakness.read(Path.of(arguments[1])),
            Files.readString(page, StandardCharsets.UTF_8));
    faults.forEach(System.err::println);
    System.exit(faults.isEmpty() ? 0 : 1);
  }

  /** Everything that is not as it must be, in sentences. */
  static List<String> faults(
      List<Component> components, List<KnownWeakness> known, String notices) {
    List<String> faults = new ArrayList<>();
    if (components.isEmpty()) {
      faults.add("The bill of materials names no library.");
    }
    for (Component component : components) {
      known.stream()
          .filter(weakness -> weakness.isOf(component))
          .forEach(
              w ->
                  faults.add(
                      "%s %s has %s: take %s or later."
                          .formatted(
                              component.coordinates(), component.version(), w.id(), w.before())));
      if (component.licences().isEmpty()) {
        faults.add(component.coordinates() + " names no licence.");
      }
    }
    if (!notices.equals(notices(components))) {
      faults.add("The third-party notices are not those of the libraries: write them anew.");
    }
    return faults;
  }

  /** The page of notices. */
  static String notices(List<Component> components) {
    return """
    # Third-party notices

    What the program stands on when it runs, from its bill of materials. Written by `./check`'s gate
    of libraries; not edited by hand. Each keeps its own licence, whose text lies inside its jar or at
    its home; NOTICE says what else has to be said.

    | library | version | licence |
    | --- | --- | --- |
    """
        + components.stream()
            .map(
                c ->
                    "| %s | %s | %s |%n"
                        .formatted(c.coordinates(), c.version(), String.join("; ", c.licences())))
            .collect(Collectors.joining());
  }
}
