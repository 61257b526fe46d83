package cistern.clinic.casework.gel;

import cistern.clinic.web.PageRequest;
import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is typed of the places of bands that were missed, by lane.
 *
 * @param typed as it was typed
 * @param troubles what is wrong with it
 */
record DrawnPlace(Map<Integer, String> typed, Map<Integer, String> troubles) {

  private static final String FIELD = "y-";

  /** Nothing is typed. */
  static final DrawnPlace NONE = new DrawnPlace(Map.of(), Map.of());

  DrawnPlace {
    typed = Map.copyOf(typed);
    troubles = Map.copyOf(troubles);
  }

  /** The field of a lane. */
  static String field(int lane) {
    return FIELD + lane;
  }

  /** Whether a field of a form is that of a lane. */
  static boolean isField(String name) {
    return name.matches(FIELD + "\\d{1,3}");
  }

  /** What stood in the fields, with nothing said of it. */
  static DrawnPlace of(Map<String, String> fields) {
    Map<Integer, String> typed = new HashMap<>();
    fields.forEach(
        (name, text) -> typed.put(Integer.parseInt(name.substring(FIELD.length())), text));
    return new DrawnPlace(typed, Map.of());
  }

  /** The places that are shown: those of other rows are of no lane. */
  static String range(LaneWindow window) {
    double top = top(window);
    return LanePoint.number(top) + " to " + LanePoint.number(top + window.height());
  }

  /** The row of the picture with which a window begins. */
  static double top(LaneWindow window) {
    return -window.y(new BandMark(0, 0, 0, OptionalInt.empty(), 0, ""));
  }

  /** What a form says of both lanes, with what is wrong. */
  static DrawnPlace of(PageRequest visit, EditedPair bands, LaneWindow window) {
    Map<Integer, String> typed = new HashMap<>();
    Map<Integer, String> troubles = new HashMap<>();
    for (LaneReading lane : List.of(bands.bands().csf(), bands.bands().serum())) {
      String text = visit.field(field(lane.index()));
      if (!text.isEmpty()) {
        typed.put(lane.index(), text);
        if (!isShown(LanePoint.parse(text), window)) {
          troubles.put(lane.index(), "A place is a number from " + range(window) + ".");
        }
      }
    }
    if (typed.isEmpty()) {
      troubles.put(bands.bands().csf().index(), "Type the place of the band in its lane.");
    }
    return new DrawnPlace(typed, troubles);
  }

  /** The same, with a trouble beside each place for which there is no room. */
  DrawnPlace within(int most, int drawnBefore) {
    if (drawnBefore + typed.size() <= most) {
      return this;
    }
    Map<Integer, String> all = new HashMap<>(troubles);
    typed
        .keySet()
        .forEach(
            lane -> all.put(lane, most + " drawn bands are the most of a pair: take some away."));
    return new DrawnPlace(typed, all);
  }

  private static boolean isShown(OptionalDouble place, LaneWindow window) {
    double top = top(window);
    return place.isPresent()
        && place.getAsDouble() >= top
        && place.getAsDouble() <= top + window.height();
  }

  /** The bands that are drawn at these places. */
  List<AddedBand> bands(String by) {
    List<AddedBand> bands = new ArrayList<>();
    typed.forEach(
        (lane, text) ->
            LanePoint.parse(text)
                .ifPresent(y -> bands.add(new AddedBand(lane, y, OptionalInt.empty(), by))));
    return bands;
  }
}
