package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the reader gave on gels of strangers' hands, as {@code training/evaluate.py} left it: first
 * figures and later ones stand in docs/validation.md side by side.
 */
class HandFiguresTest {
  private static final Pattern LINE =
      Pattern.compile("(?<hand>[A-Z]), (?<when>[^:]+), (?<level>easy|medium|hard): (?<figures>.*)");

  private static final Pattern SURE =
      Pattern.compile("not for review ([0-9.]+), of these right (?<right>[0-9.]+)");

  /** A project rule: what asks for no look is right so often, on every hand. */
  private static final double LEAST_RIGHT = 0.98;

  static Stream<String> lines() throws IOException {
    Path folder = Path.of(System.getProperty("cistern.root"), "training/figures");
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList().stream()
          .flatMap(HandFiguresTest::lines)
          .filter(line -> LINE.matcher(line).matches());
    }
  }

  private static Stream<String> lines(Path file) {
    try {
      return Files.readAllLines(file).stream();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("lines")
  void figures_ofAStrangersHand_areReportedAndSureAnswersAreRight(String line) {
    Matcher read = LINE.matcher(line);
    assertThat(read.matches()).isTrue();
    Matcher sure = SURE.matcher(read.group("figures"));
    assertThat(sure.find()).as(line).isTrue();
    assertThat(Double.parseDouble(sure.group("right"))).as(line).isGreaterThan(LEAST_RIGHT);
    OutsideCheck.of(
            "Gels of hand %s, %s, %s"
                .formatted(read.group("hand"), read.group("level"), read.group("when")),
            "a generator of somebody who had not seen the program; read-gel --against",
            aims(read.group("level")))
        .toTable(read.group("figures"));
  }

  private static String aims(String level) {
    return switch (level) {
      case "easy" -> "yes or no .99, exact .97, pattern .97, sure .95, refused .01, marked .98";
      case "medium" -> "yes or no .975, exact .93, pattern .95, sure .88, refused .02, marked .95";
      default -> "yes or no .945, exact .80, pattern .88, sure .75, refused .05, marked .90";
    };
  }
}
