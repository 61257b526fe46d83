package cistern.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.architecture.broken.criteria.SeesGels;
import cistern.architecture.broken.gel.Gel;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each rule of the house, on something that breaks it and on its neighbour that does not. */
class RulesBiteTest {

  private static final String BROKEN = "cistern.architecture.broken";

  private static final JavaClasses CLASSES = new ClassFileImporter().importPackages(BROKEN);

  @Nested
  class OnClasses {

    @Test
    void plan_arrowUpwards_named() {
      assertThat(new Plan(BROKEN).check(CLASSES))
          .anyMatch(line -> line.startsWith("measurement may not see panel"))
          .noneMatch(line -> line.startsWith("panel may not see"));
    }

    @Test
    void plan_criteriaSeeAGel_named() {
      assertThat(new Plan(BROKEN).check(CLASSES))
          .anyMatch(
              line -> line.startsWith("criteria may not see gel") && line.contains("SeesAGel"));
    }

    @Test
    void plan_criteriaSeeAnArrayOfGels_named() {
      JavaClasses gels = new ClassFileImporter().importClasses(SeesGels.class, Gel.class);

      assertThat(new Plan(BROKEN).check(gels))
          .anyMatch(line -> line.startsWith("criteria may not see gel"));
    }

    @Test
    void plan_foundationSeesWhatStandsOnIt_named() {
      assertThat(new Plan(BROKEN).check(CLASSES))
          .anyMatch(line -> line.startsWith("report.look may not see report.page"));
    }

    @Test
    void plan_roomNotDrawn_named() {
      assertThat(new Plan(BROKEN).check(CLASSES))
          .anyMatch(line -> line.startsWith("orchard is not drawn in the plan"));
    }

    @Test
    void cycles_twoRooms_named() {
      assertThat(violations(HouseRules.noCycles(BROKEN)))
          .singleElement()
          .asString()
          .contains("measurement", "panel");
    }

    @Test
    void medicine_knowsAColour_named() {
      assertThat(violations(HouseRules.medicineStandsAlone(BROKEN)))
          .isNotEmpty()
          .allMatch(line -> line.contains("PaintsWithAwt"));
    }

    @Test
    void names_thatSayNothing_namedAndDatabaseIsNot() {
      assertThat(violations(HouseRules.NAMES_SAY_WHAT_A_THING_IS))
          .hasSize(2)
          .anyMatch(line -> line.contains("PanelManager"))
          .anyMatch(line -> line.contains("DataReaders"));
    }

    @Test
    void names_twoTypesOfOneName_named() {
      assertThat(
              SourceRules.checkNames(
                  List.of(Path.of("a/Grid.java"), Path.of("b/Grid.java"), Path.of("b/Cell.java"))))
          .singleElement()
          .asString()
          .contains("a/Grid.java", "b/Grid.java");
    }

    @Test
    void packages_layer_named() {
      assertThat(violations(HouseRules.PACKAGES_ARE_IDEAS))
          .singleElement()
          .asString()
          .contains("util.Tool");
    }

    @Test
    void printing_named() {
      assertThat(violations(HouseRules.NOBODY_PRINTS))
          .singleElement()
          .asString()
          .contains("Untidy.print");
    }

    @Test
    void clocks_threeKinds_namedAndThePassedInOneIsNot() {
      assertThat(violations(HouseRules.TIME_IS_PASSED_IN))
          .hasSize(3)
          .allMatch(line -> line.contains("Untidy.clock"));
    }

    @Test
    void chance_threeKinds_namedAndTheSeededOneIsNot() {
      assertThat(violations(HouseRules.CHANCE_IS_PASSED_IN))
          .hasSize(3)
          .allMatch(line -> line.contains("Untidy.chance"));
    }

    @Test
    void statics_changing_named() {
      assertThat(violations(HouseRules.STATICS_DO_NOT_CHANGE))
          .singleElement()
          .asString()
          .contains("Untidy.changing");
    }

    @Test
    void arrays_handedOut_namedAndThePrivateOneIsNot() {
      assertThat(violations(HouseRules.ARRAYS_ARE_NOT_HANDED_OUT))
          .singleElement()
          .asString()
          .contains("Untidy.HANDED_OUT");
    }

    private List<String> violations(ArchRule rule) {
      return HouseTest.violations(rule, CLASSES);
    }
  }

  @Nested
  class OnSources {

    @TempDir Path folder;

    @ParameterizedTest
    @CsvSource({"400, 0", "401, 1"})
    void length_atAndOverTheStop(int lines, int violations) throws IOException {
      Path file = write("A.java", String.join("", Collections.nCopies(lines, "//\n")));

      assertThat(SourceRules.checkLength(List.of(file))).hasSize(violations);
    }

    @ParameterizedTest
    @CsvSource({"38, 0", "39, 1"})
    void methods_longAtAndOverTheStop(int lines, int violations) throws IOException {
      String body = String.join("", Collections.nCopies(lines, "    int a;\n"));
      Path file = write("A.java", "class A {\n  void a() {\n" + body + "  }\n}\n");

      assertThat(SourceRules.checkMethods(List.of(file))).hasSize(violations);
    }

    @Test
    void methods_longTableAbove_isNotTheirLength() throws IOException {
      String table = String.join("", Collections.nCopies(60, "    \"a\",\n"));
      Path file = write("A.java", "class A {\n  @B({\n" + table + "  })\n  void a() {}\n}\n");

      assertThat(SourceRules.checkMethods(List.of(file))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "class A { void a(int a, int b, int c, int d, int e) {} } | 0",
          "class A { void a(int a, int b, int c, int d, int e, int f) {} } | 1",
          "class A { A(int a, int b, int c, int d, int e, int f) {} } | 1",
          "class A { private A(int a, int b, int c, int d, int e, int f, int g) {} } | 0",
          "class A { private A(int a, int b, int c, int d, int e, int f, int g, int h) {} } | 1",
          "record A(int a, int b, int c, int d, int e, int f) { A { assert a > 0; } } | 0"
        })
    void methods_parametersAtAndOverTheStop(String source, int violations) throws IOException {
      assertThat(SourceRules.checkMethods(List.of(write("A.java", source)))).hasSize(violations);
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "class A {} | 1",
          "/** An A. */ class A { public void a() {} } | 0",
          "/** An A. */ public class A { public void a() {} } | 1",
          "/** An A. */ public class A { /** Does. */ public void a() {} } | 0",
          "/** An A. */ public class A { @Override public String toString() { return \"\"; } } | 0"
        })
    void comments_missing_named(String source, int violations) throws IOException {
      assertThat(SourceRules.checkComments(List.of(write("A.java", source)))).hasSize(violations);
    }

    @Test
    void packages_withoutNullMarked_named() throws IOException {
      Path file = write("A.java", "class A {}");
      assertThat(SourceRules.checkPackages(List.of(file))).hasSize(1);

      write("package-info.java", "/** A. */\npackage a;\n");
      assertThat(SourceRules.checkPackages(List.of(file))).hasSize(1);

      write("package-info.java", "/** A. */\n@NullMarked\npackage a;\n");
      assertThat(SourceRules.checkPackages(List.of(file))).isEmpty();
    }

    @Test
    void unfinished_mark_namedWithItsLine() throws IOException {
      Path file = write("A.java", "class A {\n  // TO" + "DO later\n}\n");

      assertThat(SourceRules.checkUnfinished(List.of(file)))
          .containsExactly(file + ":2: unfinished work");
    }

    @Test
    void machine_folder_namedAndAWebAddressIsNot() throws IOException {
      Path ours = write("a.md", "see /ho" + "me/somebody/file\n");
      Path web = write("b.md", "see https://example.org/work/a and docs/work/b\n");

      assertThat(SourceRules.checkMachine(List.of(ours, web))).hasSize(1);
    }

    @Test
    void modules_codeWithoutTests_named() throws IOException {
      Files.createDirectories(folder.resolve("src/main/java"));
      assertThat(SourceRules.checkTested(List.of(folder))).hasSize(1);

      Files.createDirectories(folder.resolve("src/test/java"));
      assertThat(SourceRules.checkTested(List.of(folder))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "a;1;h;read;a book;page 1 | 0",
          "a;a word;;read;a book;page 1 | 0",
          "a;1;;read;a book;page 1 | 1",
          "a;1;h;believed;a book;page 1 | 1",
          "a;1;h;read;;page 1 | 1",
          "a;1;h;memory;;recalled | 0",
          "a;1;h;read;a book; | 1",
          "a;1;h;read;a book | 1",
          "a;1;h;read;a book;page 1/a;2;h;read;a book;page 2 | 1"
        })
    void facts_row_namedWhenSomethingLacks(String rows, int violations) throws IOException {
      String text = "# version 1\nkey\tvalue\tunit\tstatus\treference\tplace\n" + rows;
      Path table = write("a.tsv", text.replace(';', '\t').replace('/', '\n'));

      assertThat(FactRows.isTable(table)).isTrue();
      assertThat(FactRows.check(List.of(table))).hasSize(violations);
    }

    private Path write(String name, String text) throws IOException {
      return Files.writeString(folder.resolve(name), text);
    }
  }
}
