package cistern.exchange.fhir;

import cistern.exchange.json.Json;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/** A JSON object while it is written; what is empty is left out, as FHIR asks. */
final class ResourceText {

  private final SequencedMap<String, Json> members = new LinkedHashMap<>();

  /** A resource of a type. */
  static ResourceText of(String type) {
    return new ResourceText().with("resourceType", type);
  }

  ResourceText with(String name, String text) {
    if (!text.isBlank()) {
      members.put(name, new Json.Text(text));
    }
    return this;
  }

  ResourceText with(String name, Optional<String> text) {
    return with(name, text.orElse(""));
  }

  ResourceText number(String name, String literal) {
    members.put(name, new Json.Numeral(literal));
    return this;
  }

  ResourceText with(String name, ResourceText inner) {
    if (!inner.members.isEmpty()) {
      members.put(name, inner.json());
    }
    return this;
  }

  ResourceText list(String name, List<ResourceText> items) {
    List<Json> kept = new ArrayList<>();
    items.stream().filter(item -> !item.members.isEmpty()).forEach(item -> kept.add(item.json()));
    if (!kept.isEmpty()) {
      members.put(name, new Json.Sequence(kept));
    }
    return this;
  }

  ResourceText texts(String name, List<String> texts) {
    members.put(name, new Json.Sequence(texts.stream().<Json>map(Json.Text::new).toList()));
    return this;
  }

  Json.Structure json() {
    return new Json.Structure(members);
  }

  /** A reference to an entry of the same bundle. */
  static ResourceText reference(String url) {
    return new ResourceText().with("reference", url);
  }

  /** A concept of one coding. */
  static ResourceText concept(String system, String code, String display) {
    return new ResourceText()
        .list(
            "coding",
            List.of(
                new ResourceText()
                    .with("system", system)
                    .with("code", code)
                    .with("display", display)));
  }
}
