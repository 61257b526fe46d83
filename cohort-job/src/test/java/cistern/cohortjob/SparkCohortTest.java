package cistern.cohortjob;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.cohort.Distribution;
import cistern.cohort.Moments;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What may not depend on how the engine divides its work; the rows are invented. */
class SparkCohortTest {

  private static final Path TABLE =
      Path.of(System.getProperty("cistern.root", "..")).resolve("examples/cohort.csv");

  @TempDir Path folder;

  /** Rows with one that is not valid, one id that stands twice, and a line break within a cell. */
  private Path table(String name, boolean isShuffled) throws IOException {
    List<String> lines = Files.readAllLines(TABLE).subList(0, 161);
    List<String> rows = new ArrayList<>(lines.subList(1, lines.size()));
    rows.replaceAll(row -> row + ",");
    rows.set(20, rows.get(20) + "\"first\nsecond \"\"line\"\"\"");
    rows.set(40, rows.get(40).replace(",cells,", ",cels,"));
    rows.set(150, rows.get(3));
    if (isShuffled) {
      Collections.shuffle(rows, new Random(5));
    }
    return Files.writeString(
        folder.resolve(name), lines.getFirst() + ",note\n" + String.join("\n", rows) + "\n");
  }

  @Nested
  class Laws {

    @Test
    void cohort_dividedShuffledAndKilled_comesOutTheSame() throws IOException {
      Path table = table("table.csv", false);
      Engine.Result one;
      try (Engine engine = new Engine(1, 1)) {
        one = engine.run(table, false);
      }
      try (Engine engine = new Engine(2, 2)) {
        Engine.Result killed = engine.run(table, true);
        Engine.Result shuffled = engine.run(table("shuffled.csv", true), false);

        assertSame(one, killed);
        assertThat(killed.rows()).isEqualTo(one.rows());
        assertThat(killed.problems()).isEqualTo(one.problems());
        assertSame(one, shuffled);
        assertThat(shuffled.rows()).containsExactlyInAnyOrderElementsOf(one.rows());
      }
      assertThat(one.summary().people()).isEqualTo(158);
      assertThat(one.refused()).isEqualTo(2);
      // the heading is line 1; the 41st row stands one line further for the break within the 21st
      assertThat(one.problems()).isNotEmpty().allMatch(said -> said.contains("row 43"));
    }

    private void assertSame(Engine.Result one, Engine.Result other) {
      assertThat(other.refused()).isEqualTo(one.refused());
      assertThat(other.profile()).isEqualTo(one.profile());
      assertThat(other.summary().people()).isEqualTo(one.summary().people());
      assertThat(other.summary().verdicts()).isEqualTo(one.summary().verdicts());
      assertThat(other.summary().criteria()).isEqualTo(one.summary().criteria());
      assertThat(other.summary().quality()).isEqualTo(one.summary().quality());
      assertThat(other.summary().byNeedle()).isEqualTo(one.summary().byNeedle());
      assertThat(other.summary().byMonth()).isEqualTo(one.summary().byMonth());
      assertThat(other.summary().gels()).isEqualTo(one.summary().gels());
      assertNear(one.summary().values(), other.summary().values());
      assertNear(one.summary().amounts(), other.summary().amounts());
    }

    /** Counts and ranks identical, moments to one part in 10¹². */
    private <K> void assertNear(SortedMap<K, Distribution> one, SortedMap<K, Distribution> other) {
      assertThat(other.keySet()).isEqualTo(one.keySet());
      one.forEach(
          (key, value) -> {
            Distribution now = other.getOrDefault(key, Distribution.NONE);
            assertThat(now.spectrum()).as(key.toString()).isEqualTo(value.spectrum());
            Moments moments = value.moments();
            assertThat(now.moments().count()).isEqualTo(moments.count());
            assertThat(now.moments().mean()).isCloseTo(moments.mean(), near(moments.mean()));
            if (moments.count() > 1) {
              double spread = moments.standardDeviation();
              assertThat(now.moments().standardDeviation()).isCloseTo(spread, near(spread));
            }
          });
    }

    private static org.assertj.core.data.Offset<Double> near(double value) {
      return within(1e-12 * Math.max(Math.abs(value), Double.MIN_NORMAL));
    }
  }

  @Test
  void read_theSameRowsInThreeCarriers_givesTheSameRows() throws IOException {
    Path table = table("table.csv", false);
    Path parquet = folder.resolve("table.parquet");
    Path lines = folder.resolve("lines.ndjson");
    String workup = "{\"workup\": 1, \"id\": \"%s\", \"results\": []}";
    Files.writeString(
        lines,
        String.join("\n", workup.formatted("one"), "", "{\"workup\": 1", workup.formatted("two")));
    try (Engine engine = new Engine(2, 1)) {
      Engine.Result ofText = engine.run(table, false);
      engine
          .spark()
          .read()
          .option("header", true)
          .option("multiLine", true)
          .option("escape", "\"")
          .csv(table.toString())
          .coalesce(1)
          .write()
          .parquet(parquet.toString());

      assertThat(engine.run(parquet, false).rows()).isEqualTo(ofText.rows());
      Engine.Result ofLines = engine.run(lines, false);
      assertThat(ofLines.rows()).hasSize(2);
      assertThat(ofLines.problems()).singleElement().asString().contains("lines.ndjson:3: ");
    }
  }
}
