package cistern.exchange.lab;

import cistern.exchange.json.Json;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Fields of a work-up beside its results that a table names by their path, such as {@code
 * procedure.done.needle.gauge}. A number in a path counts the entries of a list from 0; a cell of a
 * list of texts or numbers holds them with a semicolon between.
 */
public final class WorkupFields {

  private static final Pattern PATH =
      Pattern.compile(
          "finalDiagnosis|invented|question|note"
              + "|(procedure|evidence|context|secondReading|draws\\.(csf|serum))(\\.[A-Za-z0-9]+)+");
  private static final Pattern INDEX = Pattern.compile("\\.([0-9]+)");
  private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9][0-9]*)(\\.[0-9]+)?");

  /** Fields that are texts although what is written there may be a number. */
  private static final Set<String> TEXTS =
      Set.of(
          "finalDiagnosis",
          "question",
          "note",
          "operator",
          "level",
          "by",
          "indication",
          "who",
          "contact");

  private static final Set<String> LISTS =
      Set.of("complications", "syndromes", "supportingSigns", "ms", "portionMl", "tests");

  private WorkupFields() {}

  /** Whether a heading is the path of such a field. */
  public static boolean isPath(String heading) {
    return PATH.matcher(heading).matches();
  }

  /** The place that a path has in the work-up, for a sentence. */
  static String place(String path) {
    return INDEX.matcher(path).replaceAll("[$1]");
  }

  /** Adds fields to the members of a work-up; what is there already stays. */
  static void add(Map<String, String> fields, SequencedMap<String, Json> members) {
    SequencedMap<String, Object> tree = new LinkedHashMap<>();
    members.forEach(tree::put);
    fields.forEach((path, text) -> put(tree, List.of(path.split("\\.")), text));
    tree.forEach((name, part) -> members.put(name, toJson(part)));
  }

  private static void put(Map<String, Object> tree, List<String> path, String text) {
    String name = path.getFirst();
    if (path.size() == 1) {
      tree.putIfAbsent(name, value(name, text));
      return;
    }
    Branch branch =
        switch (tree.get(name)) {
          case Branch there -> there;
          case Json.Structure given -> Branch.of(given);
          case null, default -> new Branch(new LinkedHashMap<>());
        };
    tree.put(name, branch);
    put(branch.parts(), path.subList(1, path.size()), text);
  }

  private record Branch(SequencedMap<String, Object> parts) {

    private static Branch of(Json.Structure given) {
      return new Branch(new LinkedHashMap<>(given.members()));
    }
  }

  private static Json toJson(Object part) {
    if (part instanceof Branch(SequencedMap<String, Object> parts)) {
      boolean isList = parts.keySet().stream().allMatch(name -> name.matches("[0-9]+"));
      if (isList) {
        return new Json.Sequence(parts.values().stream().map(WorkupFields::toJson).toList());
      }
      SequencedMap<String, Json> members = new LinkedHashMap<>();
      parts.forEach((name, inner) -> members.put(name, toJson(inner)));
      return new Json.Structure(members);
    }
    return (Json) part;
  }

  private static Json value(String name, String text) {
    if (LISTS.contains(name)) {
      Stream<String> each = Arrays.stream(text.split(";")).map(String::strip);
      return new Json.Sequence(each.filter(t -> !t.isEmpty()).map(WorkupFields::plain).toList());
    }
    if (name.equals("invented")) {
      return new Json.Truth(List.of("yes", "true").contains(text));
    }
    return TEXTS.contains(name) ? new Json.Text(text) : plain(text);
  }

  private static Json plain(String text) {
    return NUMBER.matcher(text).matches() ? new Json.Numeral(text) : new Json.Text(text);
  }
}
