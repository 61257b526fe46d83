package cistern.clinic.casework.gel;

import cistern.gel.reading.KeptBands;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** The lanes of a pair while added bands are put behind those that were read, and joined. */
final class Joining {

  private final KeptBands read;
  private final List<BandMark> csf;
  private final List<BandMark> serum;

  private Joining(KeptBands read) {
    this.read = read;
    this.csf = new ArrayList<>(read.csf().bands());
    this.serum = new ArrayList<>(read.serum().bands());
  }

  /**
   * The pair with some bands of its lanes added, each joined to its counterpart when it is free.
   */
  static KeptBands with(KeptBands read, List<AddedBand> added) {
    Joining joining = new Joining(read);
    added.forEach(a -> joining.marks(a.lane()).add(a.toMark()));
    int csf = read.csf().bands().size();
    int serum = read.serum().bands().size();
    for (AddedBand band : added) {
      int place = band.lane() == read.csf().index() ? csf++ : serum++;
      band.matched().ifPresent(m -> joining.join(band.lane(), place, m));
    }
    return new KeptBands(
        with(read.csf(), joining.csf), with(read.serum(), joining.serum), read.struck());
  }

  private List<BandMark> marks(int lane) {
    return lane == read.csf().index() ? csf : serum;
  }

  private int other(int lane) {
    return lane == read.csf().index() ? read.serum().index() : read.csf().index();
  }

  private void join(int lane, int band, int counterpart) {
    boolean isThere = counterpart < marks(other(lane)).size();
    if (isThere && isFree(lane, band) && isFree(other(lane), counterpart)) {
      match(lane, band, counterpart);
      match(other(lane), counterpart, band);
    }
  }

  /** A band is free when it stands alone, or its counterpart was struck. */
  private boolean isFree(int lane, int band) {
    OptionalInt matched = marks(lane).get(band).matched();
    return matched.isEmpty()
        || read.struck().contains(new KeptBands.Strike(other(lane), matched.getAsInt()));
  }

  private void match(int lane, int band, int counterpart) {
    BandMark mark = marks(lane).get(band);
    marks(lane)
        .set(
            band,
            new BandMark(
                mark.y(),
                mark.height(),
                mark.strength(),
                OptionalInt.of(counterpart),
                mark.probability(),
                mark.reason()));
  }

  private static LaneReading with(LaneReading lane, List<BandMark> bands) {
    return new LaneReading(
        lane.index(),
        lane.kind(),
        lane.pair(),
        lane.xCentre(),
        lane.width(),
        lane.slope(),
        lane.quality(),
        lane.problems(),
        bands,
        lane.isPlaced());
  }
}
