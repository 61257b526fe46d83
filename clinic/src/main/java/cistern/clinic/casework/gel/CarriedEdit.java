package cistern.clinic.casework.gel;

import cistern.clinic.setting.Setting;
import cistern.gel.reading.KeptBands.Strike;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What a person made of a pair, carried over to a reading of the same picture with its lanes placed
 * otherwise: a band is the same where it lies at the same height of the same fluid.
 */
final class CarriedEdit {

  private final EditedPair before;
  private final EditedPair now;

  private CarriedEdit(EditedPair before, EditedPair now) {
    this.before = before;
    this.now = now;
  }

  /** The edit as it stands in the new reading; what is not found there again is left out. */
  static GelEdit of(GelCase before, GelEdit edit, GelCase now) {
    boolean isOwnLadder = edit.isLadder() != before.isReadAsLadder();
    GelEdit none = GelEdit.none(isOwnLadder ? edit.isLadder() : now.isReadAsLadder());
    return before
        .bandsKept(edit)
        .flatMap(old -> now.bandsKept(none).map(bare -> new CarriedEdit(old, bare)))
        .map(carried -> carried.edit(edit, none.isLadder()))
        .orElse(none);
  }

  private GelEdit edit(GelEdit edit, boolean isLadder) {
    Set<Strike> struck = new HashSet<>();
    for (Strike strike : edit.struck()) {
      LaneReading lane = before.lane(strike.lane());
      if (isStill(lane)) {
        same(lane, strike.band())
            .ifPresent(band -> struck.add(new Strike(other(lane).index(), band)));
      }
    }
    List<AddedBand> added =
        before.added().stream()
            .filter(band -> isStill(before.lane(band.lane())))
            .filter(band -> !isFound(band))
            .map(this::added)
            .toList();
    return new GelEdit(struck, added, isLadder);
  }

  /** Whether the fluid of a lane still lies in the same lane of the gel, and not on another. */
  private boolean isStill(LaneReading lane) {
    return isSame(lane, other(lane));
  }

  /** Whether a lane of one reading lies where that of another does. */
  static boolean isSame(LaneReading lane, LaneReading other) {
    return Math.abs(other.xCentre() - lane.xCentre()) <= lane.width() / 2;
  }

  /** Whether the new reading, unlike the old one, has found a band that a person had drawn in. */
  private boolean isFound(AddedBand band) {
    LaneReading lane = before.lane(band.lane());
    return isRead(band, now, other(lane)) && !isRead(band, before, lane);
  }

  private static boolean isRead(AddedBand band, EditedPair pair, LaneReading lane) {
    return lane.bands().stream()
        .limit(pair.readIn(lane))
        .anyMatch(read -> Math.abs(read.y() - band.y()) <= Setting.BAND_MOVED.number());
  }

  private AddedBand added(AddedBand band) {
    LaneReading lane = before.lane(band.lane());
    LaneReading counterparts = before.other(lane);
    OptionalInt matched = band.matched();
    OptionalInt same =
        matched.isPresent() && matched.getAsInt() < counterparts.bands().size()
            ? same(counterparts, matched.getAsInt())
            : OptionalInt.empty();
    return new AddedBand(other(lane).index(), band.y(), same, band.by());
  }

  /** The lane of the same fluid in the new reading. */
  private LaneReading other(LaneReading lane) {
    return before.isCsf(lane) ? now.bands().csf() : now.bands().serum();
  }

  /** The band of the new reading at the height of an old one. */
  private OptionalInt same(LaneReading lane, int band) {
    BandMark old = lane.bands().get(band);
    List<BandMark> bands = other(lane).bands();
    double nearest = Math.max(Setting.BAND_MOVED.number(), old.height());
    OptionalInt same = OptionalInt.empty();
    for (int i = 0; i < bands.size(); i++) {
      double off = Math.abs(bands.get(i).y() - old.y());
      if (off <= nearest) {
        nearest = off;
        same = OptionalInt.of(i);
      }
    }
    return same;
  }
}
