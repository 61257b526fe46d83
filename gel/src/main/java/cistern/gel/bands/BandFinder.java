package cistern.gel.bands;

import cistern.fact.Facts;
import cistern.gel.image.Density;
import cistern.gel.lanes.LanePlace;
import cistern.gel.membrane.Sheet;
import java.util.ArrayList;
import java.util.List;

/** Finds the bands of a gel's lanes. */
public final class BandFinder {
  private final Facts facts;
  private final PeakFit.Limits limits;
  private final BandProbability probability;

  public BandFinder(Facts facts) {
    this.facts = facts;
    this.probability = BandProbability.of(facts);
    this.limits =
        new PeakFit.Limits(
            facts.number("gel.bands.visible"),
            facts.number("gel.bands.beside-share"),
            facts.number("gel.bands.beside-reach"),
            facts.number("gel.bands.nearest"),
            facts.number("gel.bands.narrowest"),
            facts.number("gel.bands.widest"));
  }

  public GelBands find(Density density, Sheet sheet, List<LanePlace> places) {
    double fanSlope = places.stream().mapToDouble(LanePlace::slope).average().orElse(0);
    int[] rows = rows(density, sheet, places);
    if (places.isEmpty()) {
      return new GelBands(0, Tilt.of(List.of(), List.of(), density.width()), List.of(), 0);
    }
    List<LaneGroups> groups = new ArrayList<>();
    for (LanePlace p : places) {
      groups.add(
          LaneGroups.of(
              density,
              p,
              (int) facts.number("gel.bands.groups"),
              facts.number("gel.bands.inner-width"),
              rows));
    }
    double guess = facts.number("gel.bands.first-sigma") * density.height();
    List<Bend> bends = bends(groups, BandFilter.of(guess, guess));
    List<Double> columns = places.stream().map(LanePlace::xCentre).toList();
    Tilt tilt = Tilt.of(columns, bends, density.width());
    List<Bend> settled = settle(places, bends, tilt);
    double sigma = sigma(groups, settled, places, guess);
    BandFilter filter = BandFilter.of(facts.number("gel.bands.filter-scale") * sigma, sigma);
    Tracing tracing =
        new Tracing(
            filter,
            (int) facts.number("gel.bands.trimmed"),
            (int) (facts.number("gel.bands.noise-reach") * density.height()));
    List<LaneTrace> traces = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      traces.add(tracing.trace(places.get(i), groups.get(i), settled.get(i), rows[0]));
    }
    double relief = relief(traces);
    List<LaneBands> lanes = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      lanes.add(
          new LaneBands(
              traces.get(i),
              settled.get(i),
              LaneCondition.of(density, places.get(i), rows, facts.number("gel.lane.darkest")),
              bands(traces.get(i), filter, relief)));
    }
    ApplicationMark mark =
        new ApplicationMark(
            -fanSlope,
            facts.number("gel.mark.lean"),
            facts.number("gel.mark.reach") * sigma,
            facts.number("gel.mark.share"),
            (int) facts.number("gel.mark.fewest"));
    List<ApplicationMark.Line> marks = mark.lines(lanes);
    return new GelBands(
        sigma, tilt, lanes.stream().map(l -> mark.without(l, marks)).toList(), marks.size());
  }

  private static int[] rows(Density density, Sheet sheet, List<LanePlace> places) {
    int from = 0;
    int to = density.height();
    for (LanePlace p : places) {
      from = Math.max(from, sheet.firstRow(p.xCentre(), 4));
      to = Math.min(to, sheet.lastRow(p.xCentre(), 4));
    }
    return new int[] {from, Math.max(from + 16, to)};
  }

  private List<Bend> bends(List<LaneGroups> groups, BandFilter filter) {
    List<Bend> bends = new ArrayList<>();
    for (LaneGroups g : groups) {
      bends.add(
          new Straightening(g, filter, facts.number("gel.bands.strong"))
              .search(facts.number("gel.bands.steepest")));
    }
    return bends;
  }

  /** A lane without texture of its own, or far off the gel's tilt, takes the gel's. */
  private List<Bend> settle(List<LanePlace> places, List<Bend> bends, Tilt tilt) {
    List<Bend> settled = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      double own = tilt.slopeAt(places.get(i).xCentre());
      Bend b = bends.get(i);
      boolean isOff =
          Math.abs(b.slope() - own) * places.get(i).width() / 2
              > facts.number("gel.bands.tilt-tolerance");
      settled.add(
          b.weight() < facts.number("gel.bands.tilt-weight") || isOff
              ? new Bend(own, 0, b.weight())
              : b);
    }
    return settled;
  }

  private double sigma(
      List<LaneGroups> groups, List<Bend> bends, List<LanePlace> places, double guess) {
    Tracing rough =
        new Tracing(BandFilter.of(guess, guess), (int) facts.number("gel.bands.trimmed"), 20);
    List<float[]> profiles = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      profiles.add(rough.trace(places.get(i), groups.get(i), bends.get(i), 0).profile());
    }
    double[] scales = new double[9];
    for (int s = 0; s < scales.length; s++) {
      scales[s] = guess * 0.25 * Math.pow(2, s * 0.5);
    }
    return Math.max(0.8, new CommonSigma(scales, guess).of(profiles));
  }

  /** The median over the lanes of the span of their density. */
  private static double relief(List<LaneTrace> traces) {
    double[] spans = new double[traces.size()];
    for (int i = 0; i < spans.length; i++) {
      float[] sorted = traces.get(i).profile().clone();
      java.util.Arrays.sort(sorted);
      spans[i] = sorted[(int) (0.99 * (sorted.length - 1))] - sorted[(int) (0.05 * sorted.length)];
    }
    java.util.Arrays.sort(spans);
    return Math.max(1e-4, spans[spans.length / 2]);
  }

  private List<Band> bands(LaneTrace trace, BandFilter filter, double relief) {
    List<Band> bands = new ArrayList<>();
    float[] sizes = trace.answer().clone();
    for (int y = 0; y < sizes.length; y++) {
      sizes[y] = Math.abs(sizes[y]);
    }
    java.util.Arrays.sort(sizes);
    double usual = Math.max(1e-6, 1.4826 * sizes[sizes.length / 2]);
    List<Peak> peaks = new PeakFit(trace, filter, limits).fit();
    for (Peak p : peaks) {
      int row = Math.clamp(Math.round(p.y()), 0, trace.rows() - 1);
      double[] columns = new double[trace.columns().length];
      double mean = 0;
      double square = 0;
      for (int k = 0; k < columns.length; k++) {
        columns[k] = nearbyMost(trace.columns()[k], row) / p.height();
        mean += columns[k] / columns.length;
        square += columns[k] * columns[k] / columns.length;
      }
      java.util.Arrays.sort(columns);
      double signal = p.height() / trace.noise()[row];
      double uneven =
          Math.sqrt(Math.max(0, square - mean * mean - columns.length / (signal * signal)));
      double shade = 0;
      for (Peak o : peaks) {
        double d = Math.abs(o.y() - p.y()) / filter.sigma();
        if (o.height() > p.height()) {
          shade = Math.max(shade, Math.log1p(o.height() / p.height() * Math.exp(-d / 2.5)));
        }
      }
      Band band =
          new Band(
              trace.firstRow() + p.y(),
              p.height(),
              p.widening() * filter.sigma(),
              signal,
              columns[columns.length / 4],
              uneven,
              p.height() / relief,
              p.height() / usual,
              shade,
              0);
      bands.add(band.withProbability(probability.of(band, filter.sigma())));
    }
    return bands;
  }

  private static double nearbyMost(float[] v, int row) {
    double most = v[row];
    for (int y = Math.max(0, row - 1); y <= Math.min(v.length - 1, row + 1); y++) {
      most = Math.max(most, v[y]);
    }
    return most;
  }
}
