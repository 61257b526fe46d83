package cistern.criteria;

import cistern.measurement.Answer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The decision tables written a second time, as plainly as possible and without any cleverness:
 * every completion is listed, every subset is tried.
 */
final class PlainTables {

  private final int edition;
  private final Evidence evidence;
  private final Map<String, List<Integer>> possible = new LinkedHashMap<>();
  private final Presentation presentation;

  private PlainTables(int edition, Evidence evidence, CsfPositivity fluid) {
    this.edition = edition;
    this.evidence = evidence;
    this.presentation = evidence.presentation();
    for (String name : read()) {
      possible.put(name, possible(name, fluid));
    }
  }

  static PlainTables of(int edition, Stated stated) {
    return new PlainTables(edition, stated.evidence(), stated.fluid());
  }

  private List<String> read() {
    String attack2017 =
        "noBetterExplanation attacks objectiveLesions historicalAttack periventricular"
            + " corticalJuxtacortical infratentorial spinalCord newOrMixedEnhancingLesions bands";
    String progression2017 =
        "noBetterExplanation progressionTwelveMonths periventricular corticalJuxtacortical"
            + " infratentorial cordLesionsTwoOrMore bands";
    String isolated2024 =
        "noBetterExplanation periventricular corticalJuxtacortical infratentorial spinalCord"
            + " opticNerve newOrMixedEnhancingLesions csfPositive centralVeinSignSelectSix";
    String names =
        switch (presentation) {
          case ATTACK, UNKNOWN ->
              edition == 2017 ? attack2017 : isolated2024 + " attacks paramagneticRimLesion";
          case PROGRESSION -> edition == 2017 ? progression2017 : "noBetterExplanation";
          case NONE -> edition == 2017 ? "noBetterExplanation" : isolated2024;
          case NON_SPECIFIC -> edition == 2017 ? "" : isolated2024;
          case ATYPICAL -> "";
        };
    return names.isEmpty() ? List.of() : List.of(names.split(" ", -1));
  }

  private List<Integer> possible(String name, CsfPositivity fluid) {
    return switch (name) {
      case "attacks" -> numbers(evidence.attacks(), 1);
      case "objectiveLesions" -> numbers(evidence.objectiveLesions(), 0);
      case "bands" -> numbers(fluid.bands());
      case "csfPositive" -> numbers(fluid.csf());
      case "spinalCord" ->
          evidence.answer(Item.CORD_LESIONS_TWO_OR_MORE) == Answer.YES
              ? List.of(1)
              : numbers(evidence.answer(Item.SPINAL_CORD));
      case "cordLesionsTwoOrMore" ->
          evidence.answer(Item.SPINAL_CORD) == Answer.NO
              ? List.of(0)
              : numbers(evidence.answer(Item.CORD_LESIONS_TWO_OR_MORE));
      default -> numbers(evidence.answer(Item.parse(name).orElseThrow()));
    };
  }

  private static List<Integer> numbers(Answer answer) {
    return switch (answer) {
      case YES -> List.of(1);
      case NO -> List.of(0);
      case UNKNOWN -> List.of(0, 1);
    };
  }

  private static List<Integer> numbers(Count count, int fewest) {
    List<Integer> numbers = new ArrayList<>();
    for (int n = fewest; n <= 2; n++) {
      boolean fits = n < 2 ? count.least() <= n && n <= count.most() : count.most() >= 2;
      if (fits) {
        numbers.add(n);
      }
    }
    return numbers;
  }

  String verdict() {
    if (evidence.answer(Item.NO_BETTER_EXPLANATION) == Answer.NO) {
      return "not-met";
    }
    if (!evidence.contradictions().isEmpty()
        || presentation == Presentation.UNKNOWN
        || presentation == Presentation.ATYPICAL) {
      return "undetermined";
    }
    if (presentation == Presentation.NON_SPECIFIC && edition == 2017) {
      return "undetermined";
    }
    return verdict(possible);
  }

  private String verdict(Map<String, List<Integer>> open) {
    Set<String> verdicts = new HashSet<>();
    for (Map<String, Integer> c : completions(open)) {
      verdicts.add(one(c));
    }
    return verdicts.size() == 1 ? verdicts.iterator().next() : "undetermined";
  }

  private static List<Map<String, Integer>> completions(Map<String, List<Integer>> open) {
    List<Map<String, Integer>> all = List.of(Map.of());
    for (Map.Entry<String, List<Integer>> entry : open.entrySet()) {
      List<Map<String, Integer>> next = new ArrayList<>();
      for (Map<String, Integer> c : all) {
        for (int value : entry.getValue()) {
          Map<String, Integer> more = new HashMap<>(c);
          more.put(entry.getKey(), value);
          next.add(more);
        }
      }
      all = next;
    }
    return all;
  }

  private String one(Map<String, Integer> c) {
    if (c.getOrDefault("noBetterExplanation", 1) == 0) {
      return "not-met";
    }
    if (!rows(c).isEmpty()) {
      return "met";
    }
    if (edition == 2024) {
      boolean isSecondAttack = presentation == Presentation.ATTACK && is(c, "attacks", 2);
      return isSecondAttack || presentation == Presentation.PROGRESSION
          ? "undetermined"
          : "not-met";
    }
    return "not-met";
  }

  private Set<String> rows(Map<String, Integer> c) {
    return edition == 2017 ? rows2017(c) : rows2024(c);
  }

  private Set<String> rows2017(Map<String, Integer> c) {
    Set<String> rows = new LinkedHashSet<>();
    if (presentation == Presentation.ATTACK || presentation == Presentation.UNKNOWN) {
      boolean space = sum(c, "periventricular corticalJuxtacortical infratentorial spinalCord") > 1;
      boolean time = sum(c, "newOrMixedEnhancingLesions bands") > 0;
      String counts = c.get("attacks") + "/" + c.get("objectiveLesions");
      switch (counts) {
        case "2/2" -> rows.add("17-1");
        case "2/1" -> {
          if (is(c, "historicalAttack", 1)) {
            rows.add("17-2");
          }
          if (space) {
            rows.add("17-3");
          }
        }
        case "1/2" -> addIf(rows, "17-4", time);
        case "1/1" -> addIf(rows, "17-5", space && time);
        default -> {}
      }
    }
    if (presentation == Presentation.PROGRESSION && is(c, "progressionTwelveMonths", 1)) {
      int brain = Math.min(1, sum(c, "periventricular corticalJuxtacortical infratentorial"));
      addIf(rows, "17-P", brain + sum(c, "cordLesionsTwoOrMore bands") >= 2);
    }
    return rows;
  }

  private Set<String> rows2024(Map<String, Integer> c) {
    Set<String> rows = new LinkedHashSet<>();
    if (presentation == Presentation.PROGRESSION) {
      return rows;
    }
    int n = sum(c, "periventricular corticalJuxtacortical infratentorial spinalCord opticNerve");
    boolean any = sum(c, "newOrMixedEnhancingLesions csfPositive centralVeinSignSelectSix") > 0;
    if (presentation == Presentation.NONE || presentation == Presentation.NON_SPECIFIC) {
      addIf(rows, "24-D", n >= 2 && any);
      return rows;
    }
    addIf(rows, "24-A", n >= 4);
    addIf(rows, "24-B", (n == 2 || n == 3) && any);
    addIf(
        rows,
        "24-C",
        n == 1
            && sum(c, "newOrMixedEnhancingLesions csfPositive") > 0
            && sum(c, "centralVeinSignSelectSix paramagneticRimLesion") > 0);
    addIf(rows, "24-E", is(c, "attacks", 2) && n >= 2);
    return rows;
  }

  private static void addIf(Set<String> rows, String row, boolean holds) {
    if (holds) {
      rows.add(row);
    }
  }

  private static boolean is(Map<String, Integer> c, String name, int value) {
    return c.getOrDefault(name, 0) == value;
  }

  private static int sum(Map<String, Integer> c, String names) {
    int sum = 0;
    for (String name : names.split(" ", -1)) {
      sum += c.getOrDefault(name, 0);
    }
    return sum;
  }

  Set<String> rows() {
    Set<String> all = new HashSet<>();
    if (verdict().equals("met")) {
      completions(possible).forEach(c -> all.addAll(rows(c)));
    }
    return all;
  }

  /** What is known to be so, not what could be. */
  String basis() {
    if (!verdict().equals("met") || edition == 2024 || presentation != Presentation.ATTACK) {
      return "";
    }
    if (evidence.attacks().least() >= 2) {
      return "attack";
    }
    return evidence.answer(Item.NEW_OR_MIXED_LESIONS) == Answer.YES ? "mri" : "ocb_substitute";
  }

  Set<Set<String>> sets(boolean isForMet) {
    String wanted = isForMet ? "met" : "not-met";
    boolean isUnknown = presentation == Presentation.UNKNOWN;
    boolean isImpossible = isUnknown && evidence.attacks().most() == 0;
    boolean isSettled =
        !evidence.contradictions().isEmpty()
            || evidence.answer(Item.NO_BETTER_EXPLANATION) == Answer.NO
            || isImpossible
            || possible.isEmpty()
            || (!isUnknown && !verdict().equals("undetermined"));
    if (isSettled) {
      return Set.of();
    }
    PlainTables attack =
        isUnknown
            ? new PlainTables(edition, evidence.withPresentation(Presentation.ATTACK), NONE)
            : this;
    if (isUnknown) {
      attack.possible.putAll(possible);
    }
    Set<Set<String>> smallest = attack.smallest(wanted, isForMet);
    if (!isUnknown) {
      return smallest;
    }
    Set<Set<String>> added = new HashSet<>();
    for (Set<String> set : smallest) {
      Set<String> more = new HashSet<>(set);
      more.add("presentation");
      added.add(more);
    }
    return added;
  }

  private static final CsfPositivity NONE = Stated.fluid(Answer.UNKNOWN, Answer.UNKNOWN);

  private Set<Set<String>> smallest(String wanted, boolean isForMet) {
    List<String> open =
        possible.entrySet().stream()
            .filter(e -> e.getValue().size() > 1)
            .map(Map.Entry::getKey)
            .toList();
    List<Set<String>> sufficient = new ArrayList<>();
    for (int bits = 0; bits < 1 << open.size(); bits++) {
      Set<String> set = new HashSet<>();
      Map<String, List<Integer>> settled = new LinkedHashMap<>(possible);
      for (int i = 0; i < open.size(); i++) {
        if ((bits & (1 << i)) != 0) {
          String name = open.get(i);
          List<Integer> values = possible.getOrDefault(name, List.of());
          set.add(name);
          settled.put(name, List.of(isForMet ? values.getLast() : values.getFirst()));
        }
      }
      boolean isRedundant = sufficient.stream().anyMatch(set::containsAll);
      if (!isRedundant && allGive(wanted, settled)) {
        sufficient.add(set);
      }
    }
    Set<Set<String>> minimal = new HashSet<>();
    for (Set<String> set : sufficient) {
      if (sufficient.stream().noneMatch(o -> !o.equals(set) && set.containsAll(o))) {
        minimal.add(set);
      }
    }
    return minimal;
  }

  private boolean allGive(String wanted, Map<String, List<Integer>> settled) {
    return allGive(wanted, new ArrayList<>(settled.entrySet()), new HashMap<>());
  }

  private boolean allGive(
      String wanted, List<Map.Entry<String, List<Integer>>> rest, Map<String, Integer> c) {
    if (rest.isEmpty()) {
      return one(c).equals(wanted);
    }
    for (int value : rest.getFirst().getValue()) {
      c.put(rest.getFirst().getKey(), value);
      if (!allGive(wanted, rest.subList(1, rest.size()), c)) {
        return false;
      }
    }
    return true;
  }
}
