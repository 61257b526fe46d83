package cistern.clinic.casework.gel;

import cistern.exchange.json.Json;
import cistern.gel.reading.KeptBands.Strike;
import java.util.ArrayList;
import java.util.Arrays;
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

/**
 * What a person made of the bands that were read.
 *
 * @param struck the bands that are none
 * @param isLadder whether the person sees a regular ladder in both lanes
 */
record GelEdit(Set<Strike> struck, boolean isLadder) {

  private static final Pattern KEY = Pattern.compile("(\\d{1,3})-(\\d{1,3})");

  GelEdit {
    struck = Set.copyOf(struck);
  }

  /** The name of a band in a form. */
  static String key(int lane, int band) {
    return lane + "-" + band;
  }

  /**
   * What a form says.
   *
   * @param kept the names of the bands that are kept
   * @param all every band of the pair
   */
  static GelEdit of(List<String> kept, boolean isLadder, Set<Strike> all) {
    Set<Strike> keeps = kept.stream().flatMap(k -> strike(k).stream()).collect(Collectors.toSet());
    return new GelEdit(
        all.stream().filter(b -> !keeps.contains(b)).collect(Collectors.toSet()), isLadder);
  }

  private static Optional<Strike> strike(String key) {
    Matcher matcher = KEY.matcher(key);
    return matcher.matches()
        ? Optional.of(
            new Strike(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2))))
        : Optional.empty();
  }

  /** What a work-up file says; where it says nothing of a ladder, as it was read. */
  static GelEdit of(Json.Structure bands, boolean isReadAsLadder) {
    Set<Strike> struck =
        bands.members().get("struck") instanceof Json.Sequence list
            ? list.items().stream().flatMap(i -> strike(i).stream()).collect(Collectors.toSet())
            : Set.of();
    boolean isLadder =
        bands.members().get("ladder") instanceof Json.Truth truth ? truth.value() : isReadAsLadder;
    return new GelEdit(struck, isLadder);
  }

  private static Optional<Strike> strike(Json item) {
    return item instanceof Json.Structure band
            && band.members().get("lane") instanceof Json.Numeral lane
            && band.members().get("band") instanceof Json.Numeral index
        ? strike(lane.literal() + "-" + index.literal())
        : Optional.empty();
  }

  /** The members of a work-up file's bands that say it. */
  Map<String, Optional<Json>> toMembers() {
    List<Json> list = new ArrayList<>();
    struck.stream()
        .sorted(java.util.Comparator.comparingInt(Strike::lane).thenComparingInt(Strike::band))
        .forEach(s -> list.add(toJson(s)));
    Map<String, Optional<Json>> members = new TreeMap<>();
    members.put("struck", list.isEmpty() ? Optional.empty() : Optional.of(new Json.Sequence(list)));
    members.put("ladder", Optional.of(new Json.Truth(isLadder)));
    return members;
  }

  private static Json toJson(Strike strike) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("lane", new Json.Numeral(Integer.toString(strike.lane())));
    members.put("band", new Json.Numeral(Integer.toString(strike.band())));
    return new Json.Structure(members);
  }

  /** The kept bands as one text, for a draft. */
  static List<String> parse(String text) {
    return text.isBlank() ? List.of() : Arrays.asList(text.split(" ", -1));
  }
}
