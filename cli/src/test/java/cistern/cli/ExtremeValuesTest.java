package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every number and every time of invented work-ups, one after the other, put to ends of what a file
 * may hold and beyond: a file is read or refused, and no end is a fault of the program.
 */
class ExtremeValuesTest {

  private static final Pattern NUMBER =
      Pattern.compile("(?<=[:\\[,] ?)-?\\d[\\d.eE+-]*(?=[,}\\s\\]])");
  private static final Pattern TIME = Pattern.compile("\"\\d{4}-\\d\\d-\\d\\dT[^\"]*\"");

  private static final List<String> NUMBERS = List.of("0", "4.9e-324", "1e-30", "60", "1e9", "2e9");
  private static final List<String> TIMES =
      List.of(
          "\"1900-01-01T00:00:00Z\"",
          "\"2200-12-31T23:59:59Z\"",
          "\"+999999999-12-31T23:59:59-18:00\"",
          "\"-999999999-01-01T00:00:00+18:00\"");

  /**
   * How many ends each place is put to, in turn; the work-ups have more places than there are ends.
   */
  private static final int EACH = 2;

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({
    "typical-ms.json, interpret",
    "bloody-tap.json, interpret",
    "plan-anticoagulated.json, plan",
    "plan-afterwards.json, plan"
  })
  void command_anyValueAtItsEnd_readsOrRefuses(String example, String command) throws IOException {
    String whole = Files.readString(Path.of("../examples", example));
    List<String> files = new ArrayList<>();
    Stream.of(changed(whole, NUMBER, NUMBERS), changed(whole, TIME, TIMES))
        .flatMap(List::stream)
        .forEach(text -> files.add(written(text, files.size())));

    for (String file : files) {
      Run run = Run.of(command, file);
      assertThat(run.code()).as(file + run.err()).isIn(0, 3);
    }
  }

  private String written(String text, int number) {
    try {
      return Files.writeString(folder.resolve(number + ".json"), text).toString();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<String> changed(String whole, Pattern what, List<String> ends) {
    List<String> all = new ArrayList<>();
    Matcher found = what.matcher(whole);
    for (int place = 0; found.find(); place++) {
      for (int i = 0; i < EACH; i++) {
        String end = ends.get((EACH * place + i) % ends.size());
        all.add(whole.substring(0, found.start()) + end + whole.substring(found.end()));
      }
    }
    return all;
  }
}
