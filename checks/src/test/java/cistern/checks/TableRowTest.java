package cistern.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TableRowTest {

  @Test
  void parse_itsOwnLine_isTheSameRow() {
    TableRow row = new TableRow("a", "b", "c", "d");

    assertThat(TableRow.parse(row.toLine())).isEqualTo(row);
  }

  @Test
  void parse_threeCells_refused() {
    assertThatThrownBy(() -> TableRow.parse("a\tb\tc"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("3");
  }

  @Test
  void fingerprint_fileRenamed_differs(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("a"), "x");
    String before = Fingerprint.of(folder);
    Files.move(folder.resolve("a"), folder.resolve("b"));

    assertThat(Fingerprint.of(folder)).isNotEqualTo(before);
  }
}
