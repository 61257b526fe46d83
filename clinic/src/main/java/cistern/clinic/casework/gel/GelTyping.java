package cistern.clinic.casework.gel;

import cistern.clinic.casework.DraftText;
import cistern.clinic.setting.Setting;
import cistern.gel.reading.KeptBands.Strike;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What stands in the form of a gel's bands.
 *
 * @param keep the names of the bands that are kept
 * @param added each added band: its lane, its place and, when there is one, its counterpart
 * @param isLadder whether a person sees a ladder
 * @param missed what is typed of the places of bands that were missed, by field
 * @param placings of the lanes
 */
record GelTyping(
    List<String> keep,
    List<String> added,
    boolean isLadder,
    Map<String, String> missed,
    Placings placings) {

  static final String KEEP = "keep";
  static final String ADDED = "added";
  static final String LADDER = "ladder";
  static final String YES = "yes";

  private static final Pattern BAND =
      Pattern.compile("(\\d{1,3})@(\\d{1,6}(?:\\.\\d{1,2})?)(?:@(\\d{1,3}))?");

  GelTyping {
    keep = List.copyOf(keep);
    added = List.copyOf(added);
    missed = Map.copyOf(missed);
  }

  /** The fields that a browser sends. */
  static GelTyping of(Map<String, List<String>> fields) {
    Map<String, String> missed = new TreeMap<>();
    fields.forEach(
        (name, values) -> {
          if (DrawnPlace.isField(name) && !values.getFirst().isBlank()) {
            missed.put(name, values.getFirst());
          }
        });
    return new GelTyping(
        fields.getOrDefault(KEEP, List.of()),
        fields.getOrDefault(ADDED, List.of()),
        fields.getOrDefault(LADDER, List.of()).contains(YES),
        missed,
        Placings.of(fields));
  }

  /** What a draft says. */
  static GelTyping parse(String draft) {
    Map<String, List<String>> fields = new TreeMap<>();
    DraftText.parse(draft)
        .forEach(
            (name, text) ->
                fields.put(name, DrawnPlace.isField(name) ? List.of(text) : words(text)));
    return of(fields);
  }

  private static List<String> words(String text) {
    return text.isBlank() ? List.of() : Arrays.asList(text.split(" ", -1));
  }

  String toDraft() {
    Map<String, String> all = new TreeMap<>(bands());
    all.put(Placings.DONE, words(placings.done()));
    all.put(Placings.UNDONE, words(placings.undone()));
    return DraftText.of(all);
  }

  private static String words(List<Placement> placements) {
    return String.join(" ", placements.stream().map(Placement::toText).toList());
  }

  /** All but the placings, as one of them keeps it. */
  String across() {
    return DraftText.of(bands());
  }

  private Map<String, String> bands() {
    Map<String, String> all = new TreeMap<>(missed);
    all.put(KEEP, String.join(" ", keep));
    all.put(ADDED, String.join(" ", added));
    all.put(LADDER, isLadder ? YES : "");
    return all;
  }

  /** The same bands with other placings. */
  GelTyping with(Placings others) {
    return new GelTyping(keep, added, isLadder, missed, others);
  }

  /** The same bands with other places typed of those that were missed. */
  GelTyping withMissed(Map<String, String> others) {
    return new GelTyping(keep, added, isLadder, others, placings);
  }

  /** What stands in the form when it shows an edit of a gel. */
  static GelTyping of(GelCase gel, GelEdit edit) {
    return new GelTyping(
        gel.bandsKept(edit).map(EditedPair::all).orElse(Set.of()).stream()
            .filter(b -> !edit.struck().contains(b))
            .map(b -> GelEdit.key(b.lane(), b.band()))
            .toList(),
        edit.added().stream().map(GelTyping::text).toList(),
        edit.isLadder(),
        Map.of(),
        gel.placings());
  }

  /** An added band as a form holds it. */
  static String text(AddedBand band) {
    String counterpart = band.matched().isPresent() ? "@" + band.matched().getAsInt() : "";
    return band.lane() + "@" + LanePoint.number(band.y()) + counterpart;
  }

  /**
   * What it says of a gel.
   *
   * @param before the added bands of the case where they lie in this gel, each of them its own
   *     person's
   * @param by who types
   */
  GelEdit toEdit(GelCase gel, List<AddedBand> before, String by) {
    List<AddedBand> bands =
        added.stream()
            .limit(Setting.BANDS_ADDED.number())
            .flatMap(text -> band(text, by).stream())
            .map(
                band ->
                    before.stream()
                        .filter(band::isAt)
                        .findFirst()
                        .map(AddedBand::by)
                        .map(name -> new AddedBand(band.lane(), band.y(), band.matched(), name))
                        .orElse(band))
            .toList();
    Set<Strike> keeps =
        keep.stream().flatMap(k -> GelEdit.strike(k).stream()).collect(Collectors.toSet());
    Set<Strike> all =
        gel.bandsKept(new GelEdit(Set.of(), bands, isLadder)).map(EditedPair::all).orElse(Set.of());
    return new GelEdit(
        all.stream().filter(b -> !keeps.contains(b)).collect(Collectors.toSet()), bands, isLadder);
  }

  private static Optional<AddedBand> band(String text, String by) {
    Matcher parts = BAND.matcher(text);
    if (!parts.matches()) {
      return Optional.empty();
    }
    String counterpart = parts.group(3);
    return Optional.of(
        new AddedBand(
            Integer.parseInt(parts.group(1)),
            Double.parseDouble(parts.group(2)),
            counterpart == null
                ? OptionalInt.empty()
                : OptionalInt.of(Integer.parseInt(counterpart)),
            by));
  }
}
