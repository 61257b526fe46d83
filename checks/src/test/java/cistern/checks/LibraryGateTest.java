package cistern.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The gate of libraries, on invented ones. */
class LibraryGateTest {

  private static final KnownWeakness WEAKNESS =
      new KnownWeakness("org.example:lib", "1.2", "1.4.7", "X-1");

  private static Component library(String version) {
    return new Component("org.example", "lib", version, List.of("Apache-2.0"));
  }

  /** The order is that of version numbers: 1.10 follows 1.9, and rc comes before none. */
  @ParameterizedTest
  @CsvSource({
    "1.1.9, false",
    "1.2, true",
    "1.2.0, true",
    "1.4.6, true",
    "1.4.7-rc1, true",
    "1.4.7, false",
    "1.10, false"
  })
  void isOf_aVersion_isWithinItsEnds(String version, boolean isOf) {
    assertThat(WEAKNESS.isOf(library(version))).isEqualTo(isOf);
  }

  @Test
  void faults_ofAWeakLibrary_nameItAndTheVersionToTake() {
    List<Component> weak = List.of(library("1.4"));
    assertThat(LibraryGate.faults(weak, List.of(WEAKNESS), LibraryGate.notices(weak)))
        .containsExactly("org.example:lib 1.4 has X-1: take 1.4.7 or later.");
    List<Component> mended = List.of(library("1.4.7"));
    assertThat(LibraryGate.faults(mended, List.of(WEAKNESS), LibraryGate.notices(mended)))
        .isEmpty();
    assertThat(LibraryGate.faults(mended, List.of(WEAKNESS), "other")).hasSize(1);
    assertThat(LibraryGate.faults(List.of(), List.of(), LibraryGate.notices(List.of()))).hasSize(1);
    List<Component> bare = List.of(new Component("a", "b", "1", List.of()));
    assertThat(LibraryGate.faults(bare, List.of(), LibraryGate.notices(bare)))
        .containsExactly("a:b names no licence.");
  }

  @Test
  void read_aBillAndAList_takesWhatStandsInThem(@TempDir Path folder) throws IOException {
    Path bill =
        Files.writeString(
            folder.resolve("bom.xml"),
            """
            <bom xmlns="http://cyclonedx.org/schema/bom/1.6"><components>
            <component type="library"><group>org.example</group><name>lib</name>
            <version>1.3</version><licenses><license><id>MIT</id></license></licenses></component>
            <component type="library"><group>cistern</group><name>own</name>
            <version>1</version></component></components></bom>
            """);
    Path list =
        Files.writeString(
            folder.resolve("weak.tsv"),
            "# a comment\ncoordinates\tfrom\tbefore\tid\norg.example:*\t\t2\tX-2\n");

    List<Component> read = Component.read(bill);

    assertThat(read).containsExactly(new Component("org.example", "lib", "1.3", List.of("MIT")));
    assertThat(KnownWeakness.read(list)).allMatch(w -> w.isOf(read.getFirst()));
  }

  /** The repository's own list is of the form that is read, and names a weakness in every row. */
  @Test
  void list_ofTheRepository_isReadable() throws IOException {
    List<KnownWeakness> known = KnownWeakness.read(Path.of("known-weaknesses.tsv"));

    assertThat(known).hasSizeGreaterThan(20).allMatch(w -> w.id().startsWith("CVE-"));
    assertThat(known).allMatch(w -> KnownWeakness.compare(w.from(), w.before()) < 0);
  }
}
