package cistern.clinic.casework;

import cistern.exchange.json.Json;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import java.util.SequencedMap;

/**
 * Counts that are typed beside a gel are those of who typed them: the name of who confirmed the gel
 * before does not stand for them.
 */
final class TypedBands {

  private static final String BANDS = "bands";
  private static final List<String> COUNTS =
      List.of("csfOnly", "shared", "serumOnly", "pattern", "result");

  private TypedBands() {}

  /** A changed file, in which other counts bear the name of who typed them. */
  static Json.Structure of(Json.Structure before, Json.Structure changed, String typedBy) {
    Json.Structure old = bands(before);
    Json.Structure now = bands(changed);
    boolean isOther =
        COUNTS.stream().anyMatch(c -> !Objects.equals(old.members().get(c), now.members().get(c)));
    if (!isOther || !now.members().containsKey("gel")) {
      return changed;
    }
    SequencedMap<String, Json> members = new LinkedHashMap<>(now.members());
    members.remove("confirmedBy");
    if (Objects.equals(old.members().get("readBy"), now.members().get("readBy"))) {
      members.put("readBy", new Json.Text(typedBy));
    }
    SequencedMap<String, Json> all = new LinkedHashMap<>(changed.members());
    all.put(BANDS, new Json.Structure(members));
    return new Json.Structure(all);
  }

  private static Json.Structure bands(Json.Structure file) {
    return file.members().get(BANDS) instanceof Json.Structure bands
        ? bands
        : new Json.Structure(new LinkedHashMap<>());
  }
}
