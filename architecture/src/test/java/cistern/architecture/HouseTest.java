package cistern.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The house as it stands, against its own rules. */
class HouseTest {

  private static final Path ROOT = Path.of(System.getProperty("cistern.root", ".."));

  /** Folders that builds and tools fill. */
  private static final Set<String> MADE = Set.of("target", ".cistern", ".git", "node_modules");

  private static final Set<String> TEXTS =
      Set.of("java", "md", "xml", "tsv", "json", "py", "R", "sh", "html", "css", "ts", "svg");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("cistern");

  /** What runs inside; the commands of all three doors and the page of checks are not. */
  private static final JavaClasses INSIDE =
      CLASSES.that(
          DescribedPredicate.describe(
              "are inside",
              (JavaClass type) ->
                  Stream.of("cli", "clinic.launch", "cohortjob", "checks")
                      .noneMatch(door -> isIn(type, door))));

  @Nested
  class Classes {

    @Test
    void arrows_ofEveryClass_areDrawnInThePlan() {
      assertThat(new Plan("cistern").check(CLASSES)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("cistern.architecture.HouseTest#everywhere")
    void rule_everywhere_holds(ArchRule rule) {
      assertThat(violations(rule, CLASSES)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("cistern.architecture.HouseTest#inside")
    void rule_inside_holds(ArchRule rule) {
      assertThat(violations(rule, INSIDE)).isEmpty();
    }

    @Test
    void classes_ofTheHouse_areSeenAtAll() {
      assertThat(CLASSES.stream().map(JavaClass::getPackageName)).contains("cistern.checks");
    }
  }

  @Nested
  class Sources {

    @Test
    void files_ofJava_areShortEnough() throws IOException {
      assertThat(SourceRules.checkLength(javaFiles())).isEmpty();
    }

    @Test
    void types_ofMainSources_haveNamesOfTheirOwn() throws IOException {
      assertThat(SourceRules.checkNames(mainFiles())).isEmpty();
    }

    @Test
    void methods_ofJava_areShortAndAskForLittle() throws IOException {
      assertThat(SourceRules.checkMethods(javaFiles())).isEmpty();
    }

    @Test
    void packages_ofMainSources_sayWhatTheyAre() throws IOException {
      assertThat(mainFiles()).isNotEmpty();
      assertThat(SourceRules.checkPackages(mainFiles())).isEmpty();
    }

    @Test
    void types_ofMainSources_sayWhatTheyAre() throws IOException {
      assertThat(SourceRules.checkComments(mainFiles())).isEmpty();
    }

    @Test
    void modules_withCode_haveTests() throws IOException {
      try (Stream<Path> folders = Files.list(ROOT)) {
        List<Path> modules =
            folders
                .filter(folder -> Files.exists(folder.resolve("pom.xml")))
                .filter(folder -> !folder.endsWith("bench"))
                .toList();

        assertThat(modules).isNotEmpty();
        assertThat(SourceRules.checkTested(modules)).isEmpty();
      }
    }

    @Test
    void facts_ofEveryTable_haveSourceStatusAndUnit() throws IOException {
      List<Path> tables =
          texts().stream()
              .filter(file -> file.toString().contains("src/main/"))
              .filter(FactRows::isTable)
              .toList();

      assertThat(tables).isNotEmpty();
      assertThat(FactRows.check(tables)).isEmpty();
    }

    @Test
    void texts_ofTheRepository_leaveNothingUnfinished() throws IOException {
      assertThat(SourceRules.checkUnfinished(texts())).isEmpty();
    }

    @Test
    void texts_ofTheRepository_nameNobodysMachine() throws IOException {
      assertThat(SourceRules.checkMachine(texts())).isEmpty();
    }
  }

  static List<ArchRule> everywhere() {
    return List.of(
        HouseRules.noCycles("cistern"),
        HouseRules.medicineStandsAlone("cistern"),
        HouseRules.NAMES_SAY_WHAT_A_THING_IS,
        HouseRules.PACKAGES_ARE_IDEAS,
        HouseRules.STATICS_DO_NOT_CHANGE,
        HouseRules.ARRAYS_ARE_NOT_HANDED_OUT);
  }

  static List<ArchRule> inside() {
    return List.of(
        HouseRules.NOBODY_PRINTS, HouseRules.TIME_IS_PASSED_IN, HouseRules.CHANCE_IS_PASSED_IN);
  }

  static List<String> violations(ArchRule rule, JavaClasses classes) {
    return rule.evaluate(classes).getFailureReport().getDetails();
  }

  private static boolean isIn(JavaClass type, String room) {
    return (type.getPackageName() + ".").startsWith("cistern." + room + ".");
  }

  private static List<Path> javaFiles() throws IOException {
    return texts().stream().filter(file -> file.toString().endsWith(".java")).toList();
  }

  private static List<Path> mainFiles() throws IOException {
    return javaFiles().stream().filter(file -> file.toString().contains("src/main/java")).toList();
  }

  private static List<Path> texts() throws IOException {
    try (Stream<Path> files = Files.walk(ROOT)) {
      return files
          .filter(file -> TEXTS.contains(file.toString().replaceAll(".*\\.", "")))
          .filter(file -> MADE.stream().noneMatch(made -> isUnder(file, made)))
          .filter(Files::isRegularFile)
          .toList();
    }
  }

  private static boolean isUnder(Path file, String folder) {
    for (Path part : ROOT.relativize(file)) {
      if (part.toString().equals(folder)) {
        return true;
      }
    }
    return false;
  }
}
