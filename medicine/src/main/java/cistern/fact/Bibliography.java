package cistern.fact;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Every publication that a fact cites, kept as one file in the Citation Style Language's JSON. */
public final class Bibliography {

  private static final Bibliography STANDARD = of(resource());

  private final String text;
  private final Map<String, Reference> byKey;

  private Bibliography(String text, Map<String, Reference> byKey) {
    this.text = text;
    this.byKey = Collections.unmodifiableMap(byKey);
  }

  /** The bibliography that ships with the medicine. */
  public static Bibliography standard() {
    return STANDARD;
  }

  /**
   * A bibliography from its text.
   *
   * @throws IllegalStateException when a key comes twice, or an entry can't be found by anybody
   */
  static Bibliography of(String csl) {
    Map<String, Reference> byKey = new LinkedHashMap<>();
    if (CslText.read(csl) instanceof List<?> entries) {
      for (Object entry : entries) {
        Reference reference = reference(entry);
        if (byKey.put(reference.key(), reference) != null) {
          throw new IllegalStateException("the entry " + reference.key() + " stands twice");
        }
      }
    }
    return new Bibliography(csl, byKey);
  }

  private static String resource() {
    try (InputStream in = Bibliography.class.getResourceAsStream("bibliography.json")) {
      if (in == null) {
        throw new IllegalStateException("no bibliography");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Reference reference(Object entry) {
    Map<String, String> fields = new LinkedHashMap<>();
    if (entry instanceof Map<?, ?> all) {
      all.forEach(
          (name, value) -> {
            if (value instanceof String word) {
              fields.put(String.valueOf(name), word);
            }
          });
    }
    String author =
        first(entry, "author")
            .flatMap(a -> word(a, "family").or(() -> word(a, "literal")))
            .orElse("");
    String year = words(at(entry, "issued")).findFirst().orElse("");
    return new Reference(fields.getOrDefault("id", ""), author, year, fields);
  }

  private static Optional<Object> at(Object entry, String name) {
    return entry instanceof Map<?, ?> all ? Optional.ofNullable(all.get(name)) : Optional.empty();
  }

  private static Optional<Object> first(Object entry, String name) {
    return at(entry, name)
        .flatMap(v -> v instanceof List<?> l ? l.stream().findFirst() : at(v, ""));
  }

  private static Optional<String> word(Object entry, String name) {
    return at(entry, name).map(String::valueOf);
  }

  /** Every text within maps and lists, in order. */
  private static Stream<String> words(Optional<Object> value) {
    return value.stream()
        .flatMap(
            v ->
                switch (v) {
                  case Map<?, ?> all -> all.values().stream().flatMap(x -> words(Optional.of(x)));
                  case List<?> all -> all.stream().flatMap(x -> words(Optional.of(x)));
                  default -> Stream.of(v.toString());
                });
  }

  /**
   * The entry of a key.
   *
   * @throws IllegalStateException when there is none: a fault of the program
   */
  public Reference get(String key) {
    Reference found = byKey.get(key);
    if (found == null) {
      throw new IllegalStateException("no entry " + key + " in the bibliography");
    }
    return found;
  }

  /** All entries, in the order of the file. */
  public Collection<Reference> all() {
    return byKey.values();
  }

  /** The whole file, for a reference manager. */
  public String toCsl() {
    return text;
  }
}
