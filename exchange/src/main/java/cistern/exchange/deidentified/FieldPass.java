package cistern.exchange.deidentified;

import cistern.exchange.deidentified.KeptFields.Field;
import cistern.exchange.deidentified.KeptFields.Rule;
import cistern.exchange.json.Json;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/** One pass over the fields of a work-up: keeps what is safe, and lists the places of the rest. */
final class FieldPass {

  private static final String WHOLE_WORKUP = "workup";

  private final KeptFields kept;
  private final SafeValues values;
  private final List<String> leftOut = new ArrayList<>();

  FieldPass(KeptFields kept, SafeValues values) {
    this.kept = kept;
    this.values = values;
  }

  /** What is kept of a whole work-up. */
  Json.Structure over(Json.Structure workup) {
    return members(workup, new Spot(WHOLE_WORKUP, "")).structure();
  }

  /** The places of what is left out; a name that is not known here could itself be a value. */
  List<String> leftOut() {
    return List.copyOf(leftOut);
  }

  /**
   * Where the pass stands.
   *
   * @param row the place in the table
   * @param place the place in the work-up, with the numbers of its lists
   */
  private record Spot(String row, String place) {
    Spot member(String name) {
      return new Spot(
          row.equals(WHOLE_WORKUP) ? name : row + "." + name,
          place.isEmpty() ? name : place + "." + name);
    }

    Spot item(int index) {
      return new Spot(row + "[]", place + "[" + index + "]");
    }
  }

  /** What is kept of a structure, and whether nothing is missing that it needs. */
  private record Kept(Json.Structure structure, boolean isSound) {}

  private Kept members(Json.Structure from, Spot spot) {
    SequencedMap<String, Json> safe = new LinkedHashMap<>();
    boolean isSound = true;
    int unknown = 0;
    for (Map.Entry<String, Json> member : from.members().entrySet()) {
      Spot inner = spot.member(member.getKey());
      Optional<Field> field = kept.find(spot.row(), member.getKey());
      if (field.isEmpty() && !kept.isPlace(inner.row())) {
        unknown++;
        continue;
      }
      Optional<Json> value = value(member.getValue(), field, inner);
      value.ifPresent(v -> safe.put(member.getKey(), v));
      isSound &= value.isPresent() || field.filter(Field::isNeeded).isEmpty();
    }
    if (unknown > 0) {
      String where = spot.place().isEmpty() ? "" : spot.place() + ": ";
      leftOut.add(where + unknown + (unknown == 1 ? " field" : " fields") + " not known here");
    }
    return new Kept(new Json.Structure(safe), isSound);
  }

  private Optional<Json> value(Json value, Optional<Field> field, Spot spot) {
    if (value instanceof Json.Structure structure && kept.isPlace(spot.row())) {
      return part(structure, spot);
    }
    if (value instanceof Json.Sequence sequence && kept.isPlace(spot.row() + "[]")) {
      return items(sequence, field.filter(f -> f.rule() == Rule.WHOLE).isPresent(), spot);
    }
    Optional<Json> safe = field.flatMap(f -> values.of(f, value));
    if (safe.isEmpty()) {
      leftOut.add(spot.place());
    }
    return safe;
  }

  /** A structure; one that says something untrue without a part of it is left out. */
  private Optional<Json> part(Json.Structure structure, Spot spot) {
    int before = leftOut.size();
    Kept part = members(structure, spot);
    if (!part.isSound()) {
      return insteadOf(before, spot);
    }
    return Optional.<Json>of(part.structure()).filter(p -> !part.structure().members().isEmpty());
  }

  private Optional<Json> items(Json.Sequence sequence, boolean isWhole, Spot spot) {
    int before = leftOut.size();
    List<Json> safe = new ArrayList<>();
    for (int i = 0; i < sequence.items().size(); i++) {
      Spot at = spot.item(i);
      if (sequence.items().get(i) instanceof Json.Structure structure) {
        part(structure, at).ifPresent(safe::add);
      } else {
        leftOut.add(at.place());
      }
    }
    if (isWhole && safe.size() < sequence.items().size()) {
      return insteadOf(before, spot);
    }
    boolean isEmptied = safe.isEmpty() && !sequence.items().isEmpty();
    return isEmptied ? Optional.empty() : Optional.of(new Json.Sequence(safe));
  }

  /** Lists the whole instead of the parts listed since. */
  private Optional<Json> insteadOf(int before, Spot spot) {
    leftOut.subList(before, leftOut.size()).clear();
    leftOut.add(spot.place());
    return Optional.empty();
  }
}
