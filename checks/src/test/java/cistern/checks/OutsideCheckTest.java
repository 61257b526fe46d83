package cistern.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OutsideCheckTest {

  @TempDir Path folder;

  @Test
  void toFolder_writtenTwice_keepsTheLastRow() throws IOException {
    OutsideCheck check = OutsideCheck.of("sum", "by hand", "exact");

    check.toFolder(folder, "1 of 2 agree");
    check.toFolder(folder, "2 of 2 agree");

    assertThat(rows()).containsExactly("sum\tby hand\texact\t2 of 2 agree\n");
  }

  @Test
  void toFolder_anotherSource_isAnotherRow() throws IOException {
    OutsideCheck.of("sum", "by hand", "exact").toFolder(folder, "agrees");
    OutsideCheck.of("sum", "abacus", "exact").toFolder(folder, "agrees");

    assertThat(rows()).hasSize(2);
  }

  @Test
  void toTable_comparisonMade_rowLiesWhereTheBuildAsks() throws IOException {
    // FIPS 180-4, example of one block: SHA-256 of "abc" begins ba7816bf 8f01cfea
    String digits = Fingerprint.of("abc");
    assertThat(digits).isEqualTo("ba7816bf8f01cfea");

    OutsideCheck.of("Fingerprint of a text: SHA-256 of \"abc\"", "FIPS 180-4, example 1", "exact")
        .toTable(0);

    Path written = Path.of(System.getProperty(OutsideCheck.FOLDER, "target/validation"));
    try (Stream<Path> files = Files.list(written)) {
      assertThat(files.map(OutsideCheckTest::text)).anyMatch(row -> row.contains("FIPS 180-4"));
    }
  }

  @ParameterizedTest
  @CsvSource({"0, exact", "1, at most 1e0", "2e-12, at most 1e-11", "0.5, at most 1e0"})
  void toPowerOfTen_deviation_nextPowerAbove(double deviation, String text) {
    assertThat(OutsideCheck.toPowerOfTen(deviation)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
  void toPowerOfTen_noDeviation_refused(double deviation) {
    assertThatThrownBy(() -> OutsideCheck.toPowerOfTen(deviation))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "two\nlines", "a\ttab"})
  void of_noLineOfText_refused(String text) {
    assertThatThrownBy(() -> OutsideCheck.of(text, "s", "t"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("what");
  }

  private List<String> rows() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(OutsideCheckTest::text).sorted().toList();
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
