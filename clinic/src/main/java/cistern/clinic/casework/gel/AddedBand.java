package cistern.clinic.casework.gel;

import cistern.exchange.json.Json;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.LinkedHashMap;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;

/**
 * A band that the reader missed and a person drew in.
 *
 * @param lane index of the lane
 * @param y its middle, in pixels from the top of the picture
 * @param matched index of its counterpart in the other lane of the pair: those that were read come
 *     first, then those that were added
 * @param by the name of the person
 */
record AddedBand(int lane, double y, OptionalInt matched, String by) {

  /** No picture that is taken is as high. */
  private static final double LOWEST = 1e6;

  /** The band as those that were read stand in a lane; it has no strength of its own. */
  BandMark toMark() {
    return new BandMark(y, 0, 0, OptionalInt.empty(), 1, "added by " + by);
  }

  AddedBand withMatched(OptionalInt counterpart) {
    return new AddedBand(lane, y, counterpart, by);
  }

  boolean isAt(AddedBand other) {
    return lane == other.lane && y == other.y;
  }

  /** What a work-up file says; nothing where it says no place. */
  static Optional<AddedBand> parse(Json item) {
    if (item instanceof Json.Structure band
        && band.members().get("lane") instanceof Json.Numeral lane
        && lane.literal().matches("\\d{1,3}")
        && band.members().get("y") instanceof Json.Numeral y) {
      double place = Double.parseDouble(y.literal());
      OptionalInt matched =
          band.members().get("matched") instanceof Json.Numeral index
                  && index.literal().matches("\\d{1,3}")
              ? OptionalInt.of(Integer.parseInt(index.literal()))
              : OptionalInt.empty();
      String by = band.members().get("by") instanceof Json.Text name ? name.value() : "somebody";
      return place >= 0 && place < LOWEST
          ? Optional.of(new AddedBand(Integer.parseInt(lane.literal()), place, matched, by))
          : Optional.empty();
    }
    return Optional.empty();
  }

  Json toJson() {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("lane", new Json.Numeral(Integer.toString(lane)));
    members.put("y", new Json.Numeral(LanePoint.number(y)));
    matched.ifPresent(m -> members.put("matched", new Json.Numeral(Integer.toString(m))));
    members.put("by", new Json.Text(by));
    return new Json.Structure(members);
  }
}
