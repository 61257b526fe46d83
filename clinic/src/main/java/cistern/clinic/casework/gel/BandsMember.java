package cistern.clinic.casework.gel;

import cistern.exchange.json.Json;
import cistern.gel.lanes.LanePlan;
import cistern.gel.lanes.NamedLane;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Stream;

/** The part of a work-up file that tells of the bands. */
final class BandsMember {

  private static final String BANDS = "bands";

  private BandsMember() {}

  /** What a file says of the bands; an empty object when it says nothing. */
  static Json.Structure of(Json.Structure file) {
    return file.members().get(BANDS) instanceof Json.Structure bands
        ? bands
        : new Json.Structure(new LinkedHashMap<>());
  }

  /** A file with some members of its bands set or, where there is nothing, removed. */
  static Json.Structure with(Json.Structure file, Map<String, Optional<Json>> changes) {
    SequencedMap<String, Json> bands = new LinkedHashMap<>(of(file).members());
    changes.forEach(
        (name, value) -> value.ifPresentOrElse(v -> bands.put(name, v), () -> bands.remove(name)));
    SequencedMap<String, Json> members = new LinkedHashMap<>(file.members());
    members.put(BANDS, new Json.Structure(bands));
    return new Json.Structure(members);
  }

  /** Whether two files place the lanes of the same picture alike. */
  static boolean isPlacedAlike(Json.Structure one, Json.Structure other) {
    return Stream.of("gel", "lanes")
        .allMatch(name -> Objects.equals(one.members().get(name), other.members().get(name)));
  }

  /** The lanes of a gel: their names, or objects with their places as in a file of lanes. */
  static Json lanes(LanePlan plan) {
    return new Json.Sequence(
        plan.isPlaced()
            ? plan.lanes().stream().map(BandsMember::placed).toList()
            : List.of(plan.toWords().split(",", -1)).stream().<Json>map(Json.Text::new).toList());
  }

  private static Json placed(NamedLane lane) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("kind", new Json.Text(lane.kind().word()));
    count(lane.pair()).ifPresent(pair -> members.put("pair", pair));
    NamedLane.Place place = lane.place().orElseThrow();
    members.put("xCentre", new Json.Numeral(LanePoint.number(place.xCentre())));
    members.put("width", new Json.Numeral(LanePoint.number(place.width())));
    return new Json.Structure(members);
  }

  /** A whole number as a member. */
  static Optional<Json> count(java.util.OptionalInt count) {
    return count.isPresent()
        ? Optional.of(new Json.Numeral(Integer.toString(count.getAsInt())))
        : Optional.empty();
  }
}
