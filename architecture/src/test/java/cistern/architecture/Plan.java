package cistern.architecture;

import static java.util.Map.entry;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The plan of {@code docs/architecture.md}: every package directly under the root, and which of the
 * others it may see. A package that is not drawn here is a violation, so that the plan is changed
 * before the walls are moved.
 *
 * @param root the package under which the plan holds, {@code cistern} in earnest
 */
record Plan(String root) {

  private static final Set<String> BASE = Set.of("fact", "measurement", "finding");
  private static final Set<String> FLUIDS = with(BASE, "panel");
  private static final Set<String> QUESTIONS = with(FLUIDS, "barrier", "fluid", "bands");
  private static final Set<String> WHOLE = with(QUESTIONS, "analysis");
  private static final Set<String> ANSWERS =
      with(
          WHOLE,
          "bedside",
          "criteria",
          "differential",
          "redflag",
          "urgent",
          "conflict",
          "puncture",
          "followup",
          "uncertainty");
  private static final Set<String> MEDICINE =
      with(ANSWERS, "cohort", "weighing", "statement", "interpretation");

  private static final Map<String, Set<String>> SEES =
      Map.ofEntries(
          entry("fact", Set.of()),
          entry("measurement", Set.of("fact")),
          entry("finding", Set.of("fact", "measurement")),
          entry("bedside", BASE),
          entry("panel", BASE),
          entry("barrier", FLUIDS),
          entry("fluid", FLUIDS),
          entry("bands", FLUIDS),
          entry("analysis", with(FLUIDS, "bands")),
          entry("criteria", WHOLE),
          entry("differential", QUESTIONS),
          entry("urgent", with(WHOLE, "bedside", "differential")),
          entry("redflag", with(WHOLE, "differential")),
          entry(
              "weighing", with(WHOLE, "bedside", "criteria", "differential", "redflag", "urgent")),
          entry("followup", WHOLE),
          entry("cohort", with(ANSWERS, "interpretation", "weighing")),
          entry("conflict", WHOLE),
          entry("puncture", with(BASE, "bedside", "urgent")),
          entry("uncertainty", QUESTIONS),
          entry("statement", ANSWERS),
          entry("interpretation", with(ANSWERS, "weighing", "statement")),
          entry("gel", MEDICINE),
          entry("exchange", MEDICINE),
          entry("report", MEDICINE),
          entry("cli", with(MEDICINE, "gel", "exchange", "report")),
          entry("clinic", with(MEDICINE, "gel", "exchange", "report")),
          entry("cohortjob", with(MEDICINE, "gel", "exchange", "report")),
          entry("checks", Set.of()));

  /**
   * The foundations inside the other modules, and which of their neighbours each may see; what
   * stands on them is free within its module, as long as it goes in no circle.
   */
  private static final Map<String, Set<String>> FOUNDATIONS =
      Map.ofEntries(
          entry("clinic.setting", Set.of()),
          entry("clinic.store", Set.of("clinic.setting")),
          entry("clinic.audit", Set.of("clinic.setting", "clinic.store")),
          entry("clinic.account", Set.of("clinic.setting", "clinic.store", "clinic.audit")),
          entry("clinic.house", Set.of("clinic.setting", "clinic.store", "clinic.audit")),
          entry(
              "clinic.web",
              Set.of("clinic.setting", "clinic.store", "clinic.audit", "clinic.account")),
          entry("report.look", Set.of()),
          entry("report.markup", Set.of()),
          entry("report.wording", Set.of("report.look")),
          entry("report.figure", Set.of("report.look", "report.markup", "report.wording")),
          entry(
              "report.paper",
              Set.of("report.look", "report.markup", "report.wording", "report.figure")),
          entry("exchange.json", Set.of()),
          entry("exchange.ucum", Set.of("exchange.json")),
          entry("gel.image", Set.of()));

  /** What only starts the others: nobody sees it. */
  private static final String DOOR = "clinic.launch";

  /** The packages of the module that holds the medicine. */
  static Set<String> medicine() {
    return MEDICINE;
  }

  /** Every arrow that the plan does not hold, and every package that it does not draw. */
  List<String> check(JavaClasses classes) {
    SortedMap<String, String> violations = new TreeMap<>();
    for (JavaClass type : classes) {
      String from = roomOf(type);
      if (!from.isEmpty() && !SEES.containsKey(from)) {
        violations.putIfAbsent(from + " is not drawn in the plan", type.getName());
      }
      for (Dependency arrow : type.getDirectDependenciesFromSelf()) {
        String to = roomOf(arrow.getTargetClass().getBaseComponentType());
        if (!to.isEmpty() && !from.isEmpty() && !isDrawn(from, to)) {
          violations.putIfAbsent(from + " may not see " + to, arrow.getDescription());
        }
        String inner = innerRoomOf(type);
        String other = innerRoomOf(arrow.getTargetClass().getBaseComponentType());
        if (from.equals(to) && !isDrawnInside(inner, other)) {
          violations.putIfAbsent(inner + " may not see " + other, arrow.getDescription());
        }
      }
    }
    return violations.entrySet().stream()
        .map(entry -> entry.getKey() + ", first here: " + entry.getValue())
        .toList();
  }

  private static boolean isDrawn(String from, String to) {
    return from.equals(to) || SEES.getOrDefault(from, Set.of()).contains(to);
  }

  /** Between two rooms of one module; a class directly in the module's own package is free. */
  private static boolean isDrawnInside(String from, String to) {
    if (from.equals(to) || !to.contains(".")) {
      return true;
    }
    return !to.equals(DOOR)
        && (!FOUNDATIONS.containsKey(from) || FOUNDATIONS.get(from).contains(to));
  }

  /** The two packages under the root that a class lives in, {@code report.look}. */
  private String innerRoomOf(JavaClass type) {
    String name = type.getPackageName();
    return name.startsWith(root + ".")
        ? name.substring(root.length() + 1).replaceFirst("^([^.]+\\.[^.]+)\\..*", "$1")
        : "";
  }

  /** The package directly under the root that a class lives in; empty when it lives elsewhere. */
  private String roomOf(JavaClass type) {
    String name = type.getPackageName();
    if (!name.startsWith(root + ".")) {
      return "";
    }
    String below = name.substring(root.length() + 1);
    int dot = below.indexOf('.');
    return dot < 0 ? below : below.substring(0, dot);
  }

  private static Set<String> with(Set<String> rooms, String... more) {
    return Stream.concat(rooms.stream(), Stream.of(more)).collect(Collectors.toUnmodifiableSet());
  }
}
