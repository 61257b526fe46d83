package cistern.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.time.Clock;
import java.util.Set;
import java.util.regex.Pattern;

/** The rules that can be read from compiled classes, one constant or method a rule. */
final class HouseRules {

  /** House style, rule 13. A word inside a name counts, so that {@code DataReader} is found too. */
  private static final Set<String> FORBIDDEN_WORDS =
      Set.of(
          "Manager",
          "Helper",
          "Util",
          "Utility",
          "Service",
          "Processor",
          "Impl",
          "Data",
          "Info",
          "Dto");

  /** House style, rule 1. */
  private static final Set<String> FORBIDDEN_PACKAGES =
      Set.of("model", "service", "dao", "dto", "impl", "common", "util");

  /** Calls that give another answer on another day or another run, whatever their arguments. */
  private static final Set<String> CHANCE =
      Set.of(
          "java.lang.Math.random",
          "java.lang.StrictMath.random",
          "java.util.UUID.randomUUID",
          "java.util.concurrent.ThreadLocalRandom.current",
          "java.util.random.RandomGenerator.getDefault",
          "java.util.random.RandomGenerator.of");

  private static final Pattern WORD = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");

  static final ArchRule NAMES_SAY_WHAT_A_THING_IS =
      noClasses()
          .should(
              ArchCondition.from(
                  describe("have a name that says nothing", HouseRules::isNamedForNothing)))
          .allowEmptyShould(true);

  static final ArchRule PACKAGES_ARE_IDEAS =
      noClasses()
          .should(ArchCondition.from(describe("live in a layer", HouseRules::isInALayer)))
          .allowEmptyShould(true);

  static final ArchRule NOBODY_PRINTS =
      GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.allowEmptyShould(true);

  static final ArchRule TIME_IS_PASSED_IN =
      noClasses()
          .should()
          .callMethodWhere(describe("a clock of its own is read", HouseRules::isClock))
          .allowEmptyShould(true);

  static final ArchRule CHANCE_IS_PASSED_IN =
      noClasses()
          .should()
          .callCodeUnitWhere(describe("chance of its own is drawn", HouseRules::isChance))
          .allowEmptyShould(true);

  static final ArchRule STATICS_DO_NOT_CHANGE =
      fields()
          .that(describe("are static and written by us", HouseRules::isWrittenStatic))
          .should()
          .beFinal()
          .allowEmptyShould(true);

  static final ArchRule ARRAYS_ARE_NOT_HANDED_OUT =
      fields()
          .that(describe("are static and written by us", HouseRules::isWrittenStatic))
          .and(describe("are arrays", field -> field.getRawType().isArray()))
          .should()
          .bePrivate()
          .allowEmptyShould(true);

  private HouseRules() {}

  /** Rooms do not see each other in circles, at any depth. */
  static ArchRule noCycles(String root) {
    return slices().matching(root + ".(**)").should().beFreeOfCycles().allowEmptyShould(true);
  }

  /** The medicine stands on java.base, JSpecify and one maths library. */
  static ArchRule medicineStandsAlone(String root) {
    String[] rooms =
        Plan.medicine().stream().map(room -> root + "." + room + "..").toArray(String[]::new);
    return noClasses()
        .that()
        .resideInAnyPackage(rooms)
        .should()
        .dependOnClassesThat(describe("belong to another library", type -> isForeign(type, root)))
        .allowEmptyShould(true);
  }

  private static boolean isNamedForNothing(JavaClass type) {
    return WORD.splitAsStream(type.getSimpleName())
        .map(word -> word.replaceAll("s$", ""))
        .anyMatch(FORBIDDEN_WORDS::contains);
  }

  private static boolean isInALayer(JavaClass type) {
    return Set.of(type.getPackageName().split("\\.", -1)).stream()
        .anyMatch(FORBIDDEN_PACKAGES::contains);
  }

  private static boolean isForeign(JavaClass type, String root) {
    JavaClass component = type.getBaseComponentType();
    String name = component.getPackageName();
    return !component.isPrimitive()
        && !name.startsWith(root + ".")
        && !name.startsWith("org.jspecify.")
        && !name.startsWith("org.hipparchus.")
        && !Object.class.getModule().getPackages().contains(name);
  }

  private static boolean isClock(JavaCall<?> call) {
    AccessTarget.CodeUnitCallTarget target = call.getTarget();
    JavaClass owner = target.getOwner();
    return switch (target.getName()) {
      case "now" ->
          owner.getPackageName().startsWith("java.time")
              && target.getRawParameterTypes().stream()
                  .noneMatch(type -> type.isEquivalentTo(Clock.class));
      case "currentTimeMillis", "nanoTime" -> owner.isEquivalentTo(System.class);
      default -> owner.isEquivalentTo(Clock.class) && target.getName().startsWith("system");
    };
  }

  private static boolean isChance(JavaCall<?> call) {
    AccessTarget.CodeUnitCallTarget target = call.getTarget();
    String name = target.getOwner().getName() + "." + target.getName();
    int arguments = target.getRawParameterTypes().size();
    return switch (name) {
      case "java.util.Random.<init>", "java.util.SplittableRandom.<init>" -> arguments == 0;
      case "java.util.Collections.shuffle" -> arguments == 1;
      default -> CHANCE.contains(name) || name.startsWith("java.security.SecureRandom.");
    };
  }

  private static boolean isWrittenStatic(JavaField field) {
    return field.getModifiers().contains(JavaModifier.STATIC)
        && !field.getModifiers().contains(JavaModifier.SYNTHETIC);
  }
}
