package cistern.gel.bands;

import cistern.fact.Facts;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Measures what a trace shows as bands: height, width, how it crosses the lane, how likely. */
final class BandMeasure {
  private static final double MAD_TO_SIGMA = 1.4826;
  private static final double OTHERS_REACH = 8;

  private final BandFilter filter;
  private final PeakFit.Limits limits;
  private final BandProbability probability;
  private final double relief;
  private final double margin;
  private final double label;

  private BandMeasure(Facts facts, BandFilter filter, PeakFit.Limits limits, double relief) {
    this.filter = filter;
    this.limits = limits;
    this.probability = BandProbability.of(facts);
    this.relief = relief;
    this.margin = facts.number("gel.bands.margin");
    this.label = facts.number("gel.bands.label");
  }

  /** The measure for the traces of one gel. */
  static BandMeasure of(Facts facts, BandFilter filter, List<LaneTrace> traces) {
    PeakFit.Limits limits =
        new PeakFit.Limits(
            facts.number("gel.bands.visible"),
            facts.number("gel.bands.beside-share"),
            facts.number("gel.bands.beside-reach"),
            facts.number("gel.bands.nearest"),
            facts.number("gel.bands.narrowest"),
            facts.number("gel.bands.widest"),
            new SplitPeak.Limits(
                facts.number("gel.split.widening"),
                facts.number("gel.split.left"),
                facts.number("gel.split.weaker"),
                facts.number("gel.split.nearest")));
    return new BandMeasure(facts, filter, limits, relief(traces));
  }

  /** The median over the lanes of the span of their density. */
  private static double relief(List<LaneTrace> traces) {
    double[] spans = new double[traces.size()];
    for (int i = 0; i < spans.length; i++) {
      float[] sorted = traces.get(i).profile().clone();
      Arrays.sort(sorted);
      spans[i] = sorted[(int) (0.99 * (sorted.length - 1))] - sorted[(int) (0.05 * sorted.length)];
    }
    Arrays.sort(spans);
    return Math.max(1e-4, spans[spans.length / 2]);
  }

  /** The bands of a trace, from top to bottom. */
  List<Band> bands(LaneTrace trace) {
    float[] sizes = trace.answer().clone();
    for (int y = 0; y < sizes.length; y++) {
      sizes[y] = Math.abs(sizes[y]);
    }
    Arrays.sort(sizes);
    double usual = Math.max(1e-6, MAD_TO_SIGMA * sizes[sizes.length / 2]);
    List<Peak> peaks = new PeakFit(trace, filter, limits).fit();
    List<Band> bands = new ArrayList<>();
    for (Peak p : peaks) {
      if (p.height() > 0) {
        Band band = measured(trace, p, usual, peaks);
        double chance = probability.of(band, filter.sigma(), isAtEnd(trace, band));
        bands.add(band.withProbability(chance));
      }
    }
    List<Band> labels = bands.stream().filter(b -> isAtEnd(trace, b)).toList();
    return bands.stream().map(b -> b.withProbability(besideLabels(b, labels))).toList();
  }

  private boolean isAtEnd(LaneTrace trace, Band band) {
    double row = band.y() - trace.firstRow();
    return Math.min(row, trace.rows() - row) < margin * trace.rows();
  }

  /** What lies beside something much stronger at the lane's end is a band only if that is one. */
  private double besideLabels(Band band, List<Band> atEnd) {
    double chance = band.probability();
    for (Band other : atEnd) {
      boolean isBeside = Math.abs(other.y() - band.y()) < OTHERS_REACH * filter.sigma();
      if (isBeside && other.height() > label * band.height()) {
        chance = Math.min(chance, other.probability());
      }
    }
    return chance;
  }

  private Band measured(LaneTrace trace, Peak p, double usual, List<Peak> peaks) {
    int row = Math.clamp(Math.round(p.y()), 0, trace.rows() - 1);
    double[] columns = new double[trace.columns().length];
    double others = others(p, peaks);
    double mean = 0;
    double square = 0;
    for (int k = 0; k < columns.length; k++) {
      columns[k] = (nearbyMost(trace.columns()[k], row) - others) / p.height();
      mean += columns[k] / columns.length;
      square += columns[k] * columns[k] / columns.length;
    }
    Arrays.sort(columns);
    double signal = p.height() / trace.noise()[row];
    double chance = columns.length / (signal * signal);
    return new Band(
        trace.firstRow() + p.y(),
        p.height(),
        p.widening() * filter.sigma(),
        signal,
        columns[columns.length / 4],
        Math.sqrt(Math.max(0, square - mean * mean - chance)),
        p.height() / relief,
        p.height() / usual,
        shade(p, peaks),
        0);
  }

  /** What the other bands answer at a peak's place. */
  private double others(Peak p, List<Peak> peaks) {
    double sum = 0;
    for (Peak o : peaks) {
      double d = p.y() - o.y();
      if (!o.equals(p) && Math.abs(d) < OTHERS_REACH * filter.sigma()) {
        sum += o.height() * filter.answer(d, o.widening());
      }
    }
    return sum;
  }

  /** How far stronger bands around a peak outshine it, from 0. */
  private double shade(Peak p, List<Peak> peaks) {
    double shade = 0;
    for (Peak o : peaks) {
      double d = Math.abs(o.y() - p.y()) / filter.sigma();
      if (o.height() > p.height()) {
        shade = Math.max(shade, Math.log1p(o.height() / p.height() * Math.exp(-d / 2.5)));
      }
    }
    return shade;
  }

  private static double nearbyMost(float[] v, int row) {
    double most = v[row];
    for (int y = Math.max(0, row - 1); y <= Math.min(v.length - 1, row + 1); y++) {
      most = Math.max(most, v[y]);
    }
    return most;
  }
}
