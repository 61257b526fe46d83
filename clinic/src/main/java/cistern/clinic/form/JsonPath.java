package cistern.clinic.form;

import cistern.exchange.json.Json;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * A place in a work-up file, and how a value is set there without touching anything else.
 *
 * @param steps names of members, and indices of lists written as numbers
 */
record JsonPath(List<String> steps) {

  private static final Json NOTHING = new Json.Structure(new LinkedHashMap<>());

  JsonPath {
    steps = List.copyOf(steps);
  }

  /** The path of a text such as {@code procedure.before.antithrombotics[0].drug}. */
  static JsonPath parse(String text) {
    return new JsonPath(List.of(text.replace("[", ".").replace("]", "").split("\\.", -1)));
  }

  /** The value there, if there is one. */
  Optional<Json> find(Json root) {
    Optional<Json> here = Optional.of(root);
    for (String step : steps) {
      here = here.flatMap(json -> child(json, step));
    }
    return here;
  }

  private static Optional<Json> child(Json json, String step) {
    return switch (json) {
      case Json.Structure structure -> Optional.ofNullable(structure.members().get(step));
      case Json.Sequence sequence -> item(sequence, step);
      case Json.Text text -> Optional.empty();
      case Json.Numeral numeral -> Optional.empty();
      case Json.Truth truth -> Optional.empty();
      case Json.Nothing nothing -> Optional.empty();
      case Json.NotJson notJson -> Optional.empty();
    };
  }

  private static Optional<Json> item(Json.Sequence sequence, String step) {
    int index = isIndex(step) ? Integer.parseInt(step) : sequence.items().size();
    return index < sequence.items().size()
        ? Optional.of(sequence.items().get(index))
        : Optional.empty();
  }

  private static boolean isIndex(String step) {
    return step.matches("\\d{1,4}");
  }

  /**
   * The file with a value there, or without one. An item of a list that becomes empty keeps its
   * place, so that the others keep theirs, until the file is {@link #pruned}.
   */
  Json.Structure with(Json.Structure root, Optional<Json> value) {
    Json changed =
        with(Optional.of(root), 0, value).orElse(new Json.Structure(new LinkedHashMap<>()));
    return changed instanceof Json.Structure structure ? structure : root;
  }

  private Optional<Json> with(Optional<Json> here, int depth, Optional<Json> value) {
    if (depth == steps.size()) {
      return value;
    }
    return isIndex(steps.get(depth))
        ? inSequence(here, depth, value)
        : inStructure(here, depth, value);
  }

  private Optional<Json> inStructure(Optional<Json> here, int depth, Optional<Json> value) {
    String name = steps.get(depth);
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    if (here.orElse(null) instanceof Json.Structure structure) {
      members.putAll(structure.members());
    }
    Optional<Json> child = with(Optional.ofNullable(members.get(name)), depth + 1, value);
    child.ifPresentOrElse(c -> members.put(name, c), () -> members.remove(name));
    return members.isEmpty() ? Optional.empty() : Optional.of(new Json.Structure(members));
  }

  private Optional<Json> inSequence(Optional<Json> here, int depth, Optional<Json> value) {
    int index = Integer.parseInt(steps.get(depth));
    List<Json> items = new ArrayList<>();
    if (here.orElse(null) instanceof Json.Sequence sequence) {
      items.addAll(sequence.items());
    }
    while (items.size() <= index) {
      items.add(NOTHING);
    }
    items.set(index, with(Optional.of(items.get(index)), depth + 1, value).orElse(NOTHING));
    return Optional.of(new Json.Sequence(items));
  }

  /** The value without the empty objects that setting and removing leave in lists. */
  static Optional<Json> pruned(Json json) {
    return switch (json) {
      case Json.Structure structure -> {
        SequencedMap<String, Json> members = new LinkedHashMap<>();
        structure
            .members()
            .forEach((name, value) -> pruned(value).ifPresent(v -> members.put(name, v)));
        yield members.isEmpty() && !structure.members().isEmpty()
            ? Optional.empty()
            : Optional.of(new Json.Structure(members));
      }
      case Json.Sequence sequence -> {
        List<Json> items =
            sequence.items().stream()
                .filter(i -> !i.equals(NOTHING))
                .flatMap(i -> pruned(i).stream())
                .toList();
        yield items.isEmpty() && !sequence.items().isEmpty()
            ? Optional.empty()
            : Optional.of(new Json.Sequence(items));
      }
      case Json.Text text -> Optional.of(text);
      case Json.Numeral numeral -> Optional.of(numeral);
      case Json.Truth truth -> Optional.of(truth);
      case Json.Nothing nothing -> Optional.of(nothing);
      case Json.NotJson notJson -> Optional.of(notJson);
    };
  }

  /** The place as problems name it. */
  String toText() {
    StringBuilder text = new StringBuilder();
    for (String step : steps) {
      if (isIndex(step)) {
        text.append('[').append(step).append(']');
      } else {
        text.append(text.isEmpty() ? "" : ".").append(step);
      }
    }
    return text.toString();
  }
}
