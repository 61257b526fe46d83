package cistern.checks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * {@code docs/validation.md}: every outside check of the last run, then the studies of the last
 * long run. Composed from the rows that the tests left behind; the part of the normal run holds no
 * date and no digit that could differ from machine to machine.
 */
public final class ValidationPage {

  private static final String HEAD =
      """
      # What was checked from outside

      Written by the tests through `./check`; not edited by hand (`./check --refresh` rewrites it).
      Each row is a comparison with something that this project did not make: a printed example, a
      standard, an independent library, a second implementation. A row stands here only when its
      test passed.

      ## Checks of every run
      """;

  private static final String STUDIES = "\n## Studies\n";

  private final Path root;
  private final PrintStream out;

  ValidationPage(Path root, PrintStream out) {
    this.root = root;
    this.out = out;
  }

  /**
   * Composes, compares or rewrites the page, and the pages that tests wrote whole.
   *
   * @param arguments {@code check}, {@code refresh} or {@code studies}, the root of the repository,
   *     and for {@code studies} the sentence that says when and on which commit they ran
   * @throws IOException when the page or a row cannot be read or written
   */
  public static void main(String[] arguments) throws IOException {
    List<String> words = List.of(arguments);
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    Path root = Path.of(words.get(1));
    ValidationPage page = new ValidationPage(root, out);
    WrittenPages others = new WrittenPages(root, out);
    boolean done =
        switch (words.getFirst()) {
          case "check" -> {
            boolean same = others.check();
            yield page.check() && same;
          }
          case "refresh" -> {
            others.refresh();
            yield page.withStudies(page.readStudies());
          }
          case "studies" -> page.withStudies(page.studiesOf(words.get(2)));
          default -> throw new IllegalArgumentException("check, refresh or studies");
        };
    if (!done) {
      System.exit(1);
    }
  }

  /** Whether the page that is committed is the one that the rows give. */
  boolean check() throws IOException {
    Studies studies = readStudies();
    List<String> outdated = studies.outdated(root);
    if (studies.equals(Studies.NONE)) {
      out.println("The studies have not been run yet: ./check --long runs them.");
    } else if (!outdated.isEmpty()) {
      out.println(
          "The studies are older than the code they cover in "
              + String.join(", ", outdated)
              + ": ./check --long runs them again.");
    }
    CheckTable table = CheckTable.read(root, "target/validation");
    boolean same = toText(table, studies).equals(readPage());
    out.println(
        same
            ? "docs/validation.md holds the %d outside checks of this run.".formatted(table.size())
            : "docs/validation.md is not what this run's tests give:"
                + " ./check --refresh rewrites it from their rows.");
    return same;
  }

  boolean withStudies(Studies studies) throws IOException {
    CheckTable table = CheckTable.read(root, "target/validation");
    Files.createDirectories(page().getParent());
    Files.writeString(page(), toText(table, studies));
    out.println("docs/validation.md rewritten with %d outside checks.".formatted(table.size()));
    return true;
  }

  Studies studiesOf(String occasion) throws IOException {
    return Studies.of(root, CheckTable.read(root, "target/validation-long"), occasion);
  }

  Studies readStudies() throws IOException {
    String text = readPage();
    int start = text.indexOf(STUDIES);
    return start < 0 ? Studies.NONE : new Studies(text.substring(start + STUDIES.length()));
  }

  private static String toText(CheckTable table, Studies studies) {
    return HEAD + table.toMarkdown() + STUDIES + studies.text();
  }

  private String readPage() throws IOException {
    return Files.exists(page()) ? Files.readString(page()) : "";
  }

  private Path page() {
    return root.resolve("docs/validation.md");
  }
}
