package cistern.gel.bands;

import cistern.gel.net.PairMaps;
import cistern.gel.net.PairMaps.Fault;
import cistern.gel.net.PairMaps.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * The bands of a pair.
 *
 * @param csf of the CSF lane, from the top
 * @param serum of the serum lane
 * @param csfTrace what the picture shows along the CSF lane
 * @param serumTrace what it shows along the serum lane
 * @param alignment how the two lanes lie against each other
 * @param maps what the net says of the pair
 */
public record PairBands(
    List<Band> csf,
    List<Band> serum,
    LaneTrace csfTrace,
    LaneTrace serumTrace,
    Alignment alignment,
    PairMaps maps) {
  /** Least chance of a band that is kept at all: a faint one may be the counterpart of a clear. */
  private static final double KEPT = 0.08;

  /** Rows of the strip by which two answers may differ and mean the same band. */
  private static final int SAME = 4;

  private static final double LIKELY = 0.5;

  /** Bands of a lane from which their usual height is known. */
  private static final int FEWEST = 4;

  /** Height over the usual from which a band may be two that merge. */
  private static final double WIDE = 1.7;

  /** Copies the lists. */
  public PairBands {
    csf = List.copyOf(csf);
    serum = List.copyOf(serum);
  }

  /** The bands that the net sees, measured in the picture. */
  public static PairBands of(PairMaps maps, LaneTrace csf, LaneTrace serum) {
    List<Band> left = new ArrayList<>();
    for (int row : peaks(maps, Row.CSF)) {
      left.add(csf.band(row, maps.at(Row.CSF, row)).withAlone(most(maps, Row.CSF_ALONE, row)));
    }
    List<Band> right = new ArrayList<>();
    for (int row : peaks(maps, Row.SERUM)) {
      right.add(serum.band(row, maps.at(Row.SERUM, row)));
    }
    Alignment alignment = Alignment.of(left, right);
    right.replaceAll(b -> b.withAlone(1 - most(maps, Row.CSF, alignment.csfRow(b))));
    return new PairBands(left, right, csf, serum, alignment, maps);
  }

  /** The pair without some bands of either lane, which are no bands of a person. */
  public PairBands without(Predicate<Band> csfMark, Predicate<Band> serumMark) {
    return new PairBands(
        csf.stream().filter(csfMark.negate()).toList(),
        serum.stream().filter(serumMark.negate()).toList(),
        csfTrace,
        serumTrace,
        alignment,
        maps);
  }

  /**
   * The chance that there is a CSF-only band, one for each that the net sees. Where one is far
   * wider than the lane's others, a second that the net half sees beside it is likelier.
   */
  public double[] own() {
    List<Integer> rows = peaks(maps, Row.CSF_ALONE);
    double[] own = rows.stream().mapToDouble(row -> maps.at(Row.CSF_ALONE, row)).toArray();
    csf.stream().filter(this::isWide).forEach(b -> raise(own, rows, b));
    return own;
  }

  private boolean isWide(Band band) {
    double[] heights =
        csf.stream()
            .filter(b -> b.probability() >= LIKELY)
            .mapToDouble(Band::height)
            .sorted()
            .toArray();
    return band.probability() >= LIKELY
        && heights.length >= FEWEST
        && band.height() > WIDE * heights[heights.length / 2];
  }

  /** Draws the greatest chance under one half that lies within a band halfway to certainty. */
  private void raise(double[] own, List<Integer> rows, Band wide) {
    double within = wide.height() / csfTrace.strip().rows().step();
    int second = -1;
    for (int i = 0; i < own.length; i++) {
      boolean isBeside = own[i] < LIKELY && Math.abs(rows.get(i) - wide.row()) <= within;
      second = isBeside && (second < 0 || own[i] > own[second]) ? i : second;
    }
    if (second >= 0) {
      own[second] += 0.5 * (1 - own[second]);
    }
  }

  /** The chance that something is wrong with the pair. */
  public double fault(Fault fault) {
    return maps.fault(fault);
  }

  private static double most(PairMaps maps, Row what, int row) {
    double most = 0;
    for (int y = Math.max(0, row - SAME); y <= Math.min(PairMaps.ROWS - 1, row + SAME); y++) {
      most = Math.max(most, maps.at(what, y));
    }
    return most;
  }

  /** Rows at which a chance is greatest within two rows. */
  private static List<Integer> peaks(PairMaps maps, Row what) {
    List<Integer> peaks = new ArrayList<>();
    for (int y = 0; y < PairMaps.ROWS; y++) {
      double p = maps.at(what, y);
      boolean isPeak = p >= KEPT;
      for (int d = 1; d <= 2 && isPeak; d++) {
        isPeak =
            (y < d || maps.at(what, y - d) < p)
                && (y + d >= PairMaps.ROWS || maps.at(what, y + d) <= p);
      }
      if (isPeak) {
        peaks.add(y);
      }
    }
    return peaks;
  }
}
