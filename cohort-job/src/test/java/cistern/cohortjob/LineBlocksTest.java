package cistern.cohortjob;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.cohortjob.Blocks.Lines;
import cistern.cohortjob.InputFile.Kind;
import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.apache.spark.sql.RowFactory;
import org.junit.jupiter.api.Test;

class LineBlocksTest {

  private static final InputFile FILE = new InputFile("file:/a.csv", "/a.csv", Kind.TABLE);

  private static Block first(int division, String... lines) {
    Lines of = new Lines(FILE, 7, "a,b\n", ',', true);
    return new LineBlocks(of, division, Arrays.asList(lines).iterator()).next();
  }

  @Test
  void next_firstDivision_leavesTheHeadingOut() {
    Block block = first(0, "a,b", "1,2", "3,4");

    assertThat(block)
        .isEqualTo(new Block(new LinePlace(7, 0, 1), 3, "/a.csv", "a,b\n", "1,2\n3,4\n", false));
    assertThat(block.parts().getFirst().text()).isEqualTo("a,b\n1,2\n3,4\n");
    assertThat(block.parts().getFirst().rowsBefore()).isZero();
  }

  @Test
  void next_lineBreakInACell_keepsTheRowTogether() {
    LineBlocks all =
        new LineBlocks(
            new Lines(FILE, 7, "a,b\n", ',', true),
            1,
            Collections.nCopies(600, List.of("1,\"x", "y\"")).stream()
                .flatMap(List::stream)
                .iterator());

    List<Block> found = List.of(all.next(), all.next(), all.next());
    assertThat(found)
        .noneMatch(Block::isOpen)
        .extracting(Block::end)
        .containsExactly(512L, 1024L, 1200L);
    assertThat(all.hasNext()).isFalse();
  }

  @Test
  void next_cellNotClosedAtTheEnd_isSaid() {
    assertThat(first(1, "1,\"x", "y").isOpen()).isTrue();
    assertThat(first(1, "1,5\"", "y,").isOpen()).isFalse();
  }

  @Test
  void line_ofTypes_isWhatATableHolds() {
    assertThat(
            RowText.line(
                RowFactory.create(
                    0.00001,
                    12.5f,
                    new BigDecimal("1E+3"),
                    Timestamp.from(Instant.parse("2031-03-02T10:15:00Z")),
                    null,
                    "a \"b\", c",
                    3L)))
        .isEqualTo("0.00001,12.5,1000,2031-03-02T10:15:00Z,,\"a \"\"b\"\", c\",3");
  }
}
