package cistern.exchange.fhir;

import cistern.exchange.json.Json;
import java.util.List;
import java.util.Optional;

/**
 * An element of a resource, the same from JSON and from XML: a list of one and a single element are
 * not told apart, and a number is the text that was sent.
 *
 * @param json what it holds
 * @param path the FHIR path
 */
record FhirElement(Json json, String path) {

  private static final Json NONE = new Json.Nothing();

  /** The elements of a name, in order. */
  List<FhirElement> all(String name) {
    Optional<Json> member = member(name);
    if (member.isEmpty()) {
      return List.of();
    }
    if (member.get() instanceof Json.Sequence(List<Json> items)) {
      return java.util.stream.IntStream.range(0, items.size())
          .mapToObj(i -> new FhirElement(items.get(i), path + "." + name + "[" + i + "]"))
          .toList();
    }
    return List.of(new FhirElement(member.get(), path + "." + name));
  }

  private Optional<Json> member(String name) {
    return json instanceof Json.Structure structure
        ? Optional.ofNullable(structure.members().get(name))
        : Optional.empty();
  }

  /** The first element of a name. */
  Optional<FhirElement> first(String name) {
    Optional<Json> member = member(name);
    if (member.isPresent() && member.get() instanceof Json.Sequence(List<Json> items)) {
      return items.isEmpty()
          ? Optional.empty()
          : Optional.of(new FhirElement(items.getFirst(), path + "." + name + "[0]"));
    }
    return member.map(json -> new FhirElement(json, path + "." + name));
  }

  /** The first element of a path of names. */
  Optional<FhirElement> at(String... names) {
    Optional<FhirElement> element = Optional.of(this);
    for (String name : names) {
      element = element.flatMap(e -> e.first(name));
    }
    return element;
  }

  /** The text of the first element of a path of names; empty when it is none. */
  String text(String... names) {
    Json at = json;
    for (String name : names) {
      at = inner(at, name);
    }
    return text(at);
  }

  /** The first member of a name, without its place, which nobody asks for. */
  private static Json inner(Json of, String name) {
    Json member =
        of instanceof Json.Structure structure
            ? structure.members().getOrDefault(name, NONE)
            : NONE;
    if (member instanceof Json.Sequence(List<Json> items)) {
      return items.isEmpty() ? NONE : items.getFirst();
    }
    return member;
  }

  String text() {
    return text(json);
  }

  private static String text(Json json) {
    return switch (json) {
      case Json.Text text -> text.value().strip();
      case Json.Numeral numeral -> numeral.literal();
      case Json.Truth truth -> Boolean.toString(truth.value());
      case Json.Structure structure -> "";
      case Json.Sequence sequence -> "";
      case Json.Nothing nothing -> "";
      case Json.NotJson notJson -> "";
    };
  }

  /** The type of a resource. */
  String type() {
    return text("resourceType");
  }
}
