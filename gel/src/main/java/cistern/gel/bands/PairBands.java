package cistern.gel.bands;

import cistern.gel.net.PairMaps;
import cistern.gel.net.PairMaps.Fault;
import cistern.gel.net.PairMaps.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;

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
  /** Least chance of a band that is kept at all: what is hardly one may be part of a mark. */
  private static final double KEPT = 0.02;

  /** Bands of a lane from which their usual height is known. */
  private static final int FEWEST = 4;

  /** Height over the usual from which a band may be two that merge. */
  private static final double WIDE = 1.7;

  /** Height over the usual from which a shoulder is looked for. */
  private static final double MERGED = 1.8;

  /** The chance that what looks like a shoulder is a band. */
  private static final double SHOULDER = 0.65;

  /** How far towards certainty the second band of a wide one is drawn. */
  private static final double RAISED = 0.5;

  /** Copies the lists. */
  public PairBands {
    csf = List.copyOf(csf);
    serum = List.copyOf(serum);
  }

  /** The bands that the net sees, measured in the picture. */
  public static PairBands of(PairMaps maps, LaneTrace csf, LaneTrace serum) {
    List<Band> left = new ArrayList<>();
    for (int row : maps.peaks(Row.CSF, KEPT)) {
      left.add(csf.band(row, maps.at(Row.CSF, row)).withAlone(maps.most(Row.CSF_ALONE, row)));
    }
    List<Band> right = new ArrayList<>();
    for (int row : maps.peaks(Row.SERUM, KEPT)) {
      right.add(serum.band(row, maps.at(Row.SERUM, row)));
    }
    addShoulders(left, csf);
    addShoulders(right, serum);
    Alignment alignment = Alignment.of(maps);
    right.replaceAll(b -> b.withAlone(1 - maps.most(Row.CSF, alignment.csfRow(b.row()))));
    return new PairBands(left, right, csf, serum, alignment, maps);
  }

  /** Adds what is a band on the shoulder of another, as much alone as that one. */
  private static void addShoulders(List<Band> bands, LaneTrace trace) {
    double usual = usual(bands);
    double rows = usual / trace.strip().rows().step();
    for (Band band : List.copyOf(bands)) {
      if (band.height() > MERGED * usual && band.isLikely()) {
        trace.shoulder(band.row(), rows).stream()
            .filter(row -> bands.stream().noneMatch(b -> isSame(b, row, rows)))
            .mapToObj(row -> trace.band(row, SHOULDER * band.probability()))
            .forEach(b -> bands.add(b.withAlone(band.alone())));
      }
    }
    bands.sort(Comparator.comparingInt(Band::row));
  }

  /** Whether a band that counts lies nearer to a row than a shoulder may. */
  private static boolean isSame(Band band, int row, double usual) {
    return band.probability() >= Band.SUSPECTED
        && Math.abs(band.row() - row) < LaneTrace.NEAR * usual;
  }

  /** The usual height of a lane's likely bands; nothing is known of few. */
  private static double usual(List<Band> bands) {
    return Band.usualHeight(bands, FEWEST).orElse(Double.MAX_VALUE);
  }

  private static boolean isWide(Band band, double usual) {
    return band.isLikely() && band.height() > WIDE * usual;
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
    List<Integer> rows = maps.peaks(Row.CSF_ALONE, Band.SUSPECTED);
    double[] own = rows.stream().mapToDouble(row -> maps.at(Row.CSF_ALONE, row)).toArray();
    double usual = usual(csf);
    csf.stream().filter(b -> isWide(b, usual)).forEach(b -> raise(own, rows, b));
    DoubleStream shoulders =
        csf.stream()
            .filter(b -> b.isLikely() && maps.at(Row.CSF, b.row()) < KEPT)
            .mapToDouble(b -> b.probability() * b.alone());
    return DoubleStream.concat(Arrays.stream(own), shoulders).toArray();
  }

  /** Draws the greatest chance under one half that lies within a band halfway to certainty. */
  private void raise(double[] own, List<Integer> rows, Band wide) {
    double within = wide.height() / csfTrace.strip().rows().step();
    int second = -1;
    for (int i = 0; i < own.length; i++) {
      boolean isBeside = own[i] < Band.LIKELY && Math.abs(rows.get(i) - wide.row()) <= within;
      second = isBeside && (second < 0 || own[i] > own[second]) ? i : second;
    }
    if (second >= 0) {
      own[second] += RAISED * (1 - own[second]);
    }
  }

  /** The chance that something is wrong with the pair. */
  public double fault(Fault fault) {
    return maps.fault(fault);
  }
}
