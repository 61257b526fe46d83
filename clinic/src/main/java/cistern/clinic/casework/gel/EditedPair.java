package cistern.clinic.casework.gel;

import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.KeptBands.Strike;
import cistern.gel.reading.LaneReading;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The bands of one pair: those that were read, and behind them in each lane those that a person
 * added.
 *
 * @param read the pair as it was read
 * @param bands the same with the added bands, which are counted by the same rule
 * @param added what a person added to the two lanes
 */
record EditedPair(KeptBands read, KeptBands bands, List<AddedBand> added) {

  EditedPair {
    added = List.copyOf(added);
  }

  /** A pair with the bands that are added to its lanes; those of other lanes are left out. */
  static EditedPair of(KeptBands read, List<AddedBand> all) {
    List<AddedBand> added =
        all.stream()
            .filter(a -> a.lane() == read.csf().index() || a.lane() == read.serum().index())
            .toList();
    return new EditedPair(read, Joining.with(read, added), added);
  }

  boolean isCsf(LaneReading lane) {
    return lane.index() == read.csf().index();
  }

  /** Whether the fluid's lane lies left of the serum's. */
  boolean isCsfLeft() {
    return read.csf().xCentre() <= read.serum().xCentre();
  }

  /** The other lane of the pair, with its added bands. */
  LaneReading other(LaneReading lane) {
    return isCsf(lane) ? bands.serum() : bands.csf();
  }

  LaneReading lane(int index) {
    return index == read.csf().index() ? bands.csf() : bands.serum();
  }

  /** How many bands of a lane were read; those behind them were added. */
  int readIn(LaneReading lane) {
    return (isCsf(lane) ? read.csf() : read.serum()).bands().size();
  }

  boolean isAdded(LaneReading lane, int band) {
    return band >= readIn(lane);
  }

  /** What a band is called: the lane's letter and its number from above, or of those added. */
  String name(LaneReading lane, int band) {
    String letter = isCsf(lane) ? "C" : "S";
    return isAdded(lane, band) ? letter + "+" + (band - readIn(lane) + 1) : letter + (band + 1);
  }

  /** Where each added band stands in its lane. */
  List<Strike> places() {
    Map<Integer, Integer> before = new HashMap<>();
    List<Strike> places = new ArrayList<>();
    for (AddedBand band : added) {
      int nth = before.merge(band.lane(), 1, Integer::sum) - 1;
      places.add(new Strike(band.lane(), readIn(lane(band.lane())) + nth));
    }
    return places;
  }

  /** An added band by its place. */
  Optional<AddedBand> added(LaneReading lane, int band) {
    int at = places().indexOf(new Strike(lane.index(), band));
    return at < 0 ? Optional.empty() : Optional.of(added.get(at));
  }

  /** Every band of both lanes. */
  Set<Strike> all() {
    Set<Strike> all = new HashSet<>();
    for (LaneReading lane : List.of(bands.csf(), bands.serum())) {
      for (int i = 0; i < lane.bands().size(); i++) {
        all.add(new Strike(lane.index(), i));
      }
    }
    return all;
  }

  /**
   * Whether an added band may be told to be the counterpart's: that one stands alone, or is its.
   */
  boolean isChoice(LaneReading lane, int band, int counterpart) {
    LaneReading other = other(lane);
    OptionalInt matched = other.bands().get(counterpart).matched();
    return matched.isEmpty()
        || matched.getAsInt() == band
        || !bands.isKept(lane, matched.getAsInt());
  }

  /**
   * Two bands that are counterparts, or that a person may tell to be.
   *
   * @param csf index of the band in the fluid
   * @param serum index of the band in the serum
   */
  record Join(int csf, int serum) {}

  /** Every two bands that a line may join. */
  List<Join> joins() {
    List<Join> joins = new ArrayList<>();
    for (int csf = 0; csf < bands.csf().bands().size(); csf++) {
      for (int serum = 0; serum < bands.serum().bands().size(); serum++) {
        if (isJoined(csf, serum) || isJoinable(csf, serum)) {
          joins.add(new Join(csf, serum));
        }
      }
    }
    return joins;
  }

  private boolean isJoined(int csf, int serum) {
    return bands.csf().bands().get(csf).matched().equals(OptionalInt.of(serum));
  }

  private boolean isJoinable(int csf, int serum) {
    return (isAdded(bands.csf(), csf) && isChoice(bands.csf(), csf, serum))
        || (isAdded(bands.serum(), serum) && isChoice(bands.serum(), serum, csf));
  }

  /** Whether a line joins two bands: both are kept, and each is the other's. */
  boolean isShown(Join join) {
    return isJoined(join.csf(), join.serum()) && bands.isShared(bands.csf(), join.csf());
  }

  /** The names of kept added bands whose counterpart another band has already. */
  List<String> disputed() {
    List<Strike> places = places();
    List<String> disputed = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      LaneReading lane = lane(places.get(i).lane());
      int band = places.get(i).band();
      OptionalInt wanted = added.get(i).matched();
      if (wanted.isPresent()
          && bands.isKept(lane, band)
          && !lane.bands().get(band).matched().equals(wanted)) {
        disputed.add(name(lane, band));
      }
    }
    return disputed;
  }

  /** What is left of an edit when the added bands that were struck are taken away. */
  GelEdit withoutStruck(GelEdit edit) {
    List<Strike> places = places();
    Set<Strike> struck = edit.struck();
    List<AddedBand> left = new ArrayList<>();
    List<Strike> before = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      if (!struck.contains(places.get(i))) {
        left.add(added.get(i));
        before.add(places.get(i));
      }
    }
    List<Strike> after = of(read, left).places();
    List<AddedBand> moved = left.stream().map(a -> moved(a, before, after)).toList();
    return new GelEdit(
        struck.stream().filter(s -> !isAdded(lane(s.lane()), s.band())).collect(Collectors.toSet()),
        moved,
        edit.isLadder());
  }

  /** An added band whose counterpart, if that was added too, stands elsewhere now or nowhere. */
  private AddedBand moved(AddedBand band, List<Strike> before, List<Strike> after) {
    LaneReading other = other(lane(band.lane()));
    if (band.matched().isEmpty() || !isAdded(other, band.matched().getAsInt())) {
      return band;
    }
    int at = before.indexOf(new Strike(other.index(), band.matched().getAsInt()));
    return band.withMatched(at < 0 ? OptionalInt.empty() : OptionalInt.of(after.get(at).band()));
  }

  /** The part of the picture that is shown; added bands do not change it. */
  LaneWindow window(GelReading reading) {
    return LaneWindow.of(reading, List.of(read.csf(), read.serum()));
  }
}
