package cistern.gel.reading;

import cistern.bands.BandCounts;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A pair of lanes with the bands that a person keeps of those that were read.
 *
 * @param csf the lane of the fluid
 * @param serum the lane of the serum
 * @param struck the bands that the person struck
 */
public record KeptBands(LaneReading csf, LaneReading serum, Set<Strike> struck) {

  /** Copies the set. */
  public KeptBands {
    struck = Set.copyOf(struck);
  }

  /**
   * A band that a person struck.
   *
   * @param lane index of the lane
   * @param band index of the band in its lane, the uppermost 0
   */
  public record Strike(int lane, int band) {}

  /** The pair of a reading of which both lanes were found. */
  public static Optional<KeptBands> of(GelReading reading, int pair, Set<Strike> struck) {
    return reading.pairs().stream()
        .filter(p -> p.pair() == pair)
        .filter(p -> p.csfLane().isPresent() && p.serumLane().isPresent())
        .findFirst()
        .map(
            p ->
                new KeptBands(
                    reading.lanes().get(p.csfLane().getAsInt()),
                    reading.lanes().get(p.serumLane().getAsInt()),
                    struck));
  }

  /** Whether a band of a lane is kept. */
  public boolean isKept(LaneReading lane, int band) {
    return !struck.contains(new Strike(lane.index(), band));
  }

  /** Whether a kept band has a kept counterpart in the other lane. */
  public boolean isShared(LaneReading lane, int band) {
    LaneReading other = lane.index() == csf.index() ? serum : csf;
    OptionalInt matched = lane.bands().get(band).matched();
    return isKept(lane, band) && matched.isPresent() && isKept(other, matched.getAsInt());
  }

  /** What the kept bands amount to: a band whose counterpart was struck stands alone. */
  public BandCounts counts() {
    int shared = count(csf, true);
    return BandCounts.of(count(csf, false), shared, count(serum, false));
  }

  private int count(LaneReading lane, boolean isShared) {
    List<BandMark> bands = lane.bands();
    return (int)
        IntStream.range(0, bands.size())
            .filter(i -> isKept(lane, i) && isShared(lane, i) == isShared)
            .count();
  }
}
