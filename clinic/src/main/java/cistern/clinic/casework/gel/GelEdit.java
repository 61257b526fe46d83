package cistern.clinic.casework.gel;

import cistern.exchange.json.Json;
import cistern.gel.reading.KeptBands.Strike;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a person made of the bands that were read.
 *
 * @param struck the bands that are none
 * @param added the bands that the reader missed, in the order in which they were drawn
 * @param isLadder whether the person sees a regular ladder in both lanes
 */
record GelEdit(Set<Strike> struck, List<AddedBand> added, boolean isLadder) {

  private static final Pattern KEY = Pattern.compile("(\\d{1,3})-(\\d{1,3})");

  GelEdit {
    struck = Set.copyOf(struck);
    added = List.copyOf(added);
  }

  /** Nothing struck and nothing added. */
  static GelEdit none(boolean isLadder) {
    return new GelEdit(Set.of(), List.of(), isLadder);
  }

  /** The name of a band in a form. */
  static String key(int lane, int band) {
    return lane + "-" + band;
  }

  static Optional<Strike> strike(String key) {
    Matcher matcher = KEY.matcher(key);
    return matcher.matches()
        ? Optional.of(
            new Strike(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2))))
        : Optional.empty();
  }

  /** What a work-up file says; where it says nothing of a ladder, as it was read. */
  static GelEdit of(Json.Structure bands, boolean isReadAsLadder) {
    boolean isLadder =
        bands.members().get("ladder") instanceof Json.Truth truth ? truth.value() : isReadAsLadder;
    return new GelEdit(
        items(bands, "struck").flatMap(i -> strike(i).stream()).collect(Collectors.toSet()),
        items(bands, "added").flatMap(i -> AddedBand.parse(i).stream()).toList(),
        isLadder);
  }

  private static Stream<Json> items(Json.Structure bands, String name) {
    return bands.members().get(name) instanceof Json.Sequence list
        ? list.items().stream()
        : Stream.empty();
  }

  private static Optional<Strike> strike(Json item) {
    return item instanceof Json.Structure band
            && band.members().get("lane") instanceof Json.Numeral lane
            && band.members().get("band") instanceof Json.Numeral index
        ? strike(lane.literal() + "-" + index.literal())
        : Optional.empty();
  }

  /** The same with a band drawn in; one that stands there already is not drawn twice. */
  GelEdit with(AddedBand band) {
    if (added.stream().anyMatch(band::isAt)) {
      return this;
    }
    List<AddedBand> all = new ArrayList<>(added);
    all.add(band);
    return new GelEdit(struck, all, isLadder);
  }

  /** The members of a work-up file's bands that say it. */
  Map<String, Optional<Json>> toMembers() {
    List<Json> list = new ArrayList<>();
    struck.stream()
        .sorted(java.util.Comparator.comparingInt(Strike::lane).thenComparingInt(Strike::band))
        .forEach(s -> list.add(toJson(s)));
    Map<String, Optional<Json>> members = new TreeMap<>();
    members.put("struck", sequence(list));
    members.put("added", sequence(added.stream().map(AddedBand::toJson).toList()));
    members.put("ladder", Optional.of(new Json.Truth(isLadder)));
    return members;
  }

  private static Optional<Json> sequence(List<Json> items) {
    return items.isEmpty() ? Optional.empty() : Optional.of(new Json.Sequence(items));
  }

  private static Json toJson(Strike strike) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("lane", new Json.Numeral(Integer.toString(strike.lane())));
    members.put("band", new Json.Numeral(Integer.toString(strike.band())));
    return new Json.Structure(members);
  }
}
