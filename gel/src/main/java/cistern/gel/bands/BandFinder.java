package cistern.gel.bands;

import cistern.fact.Facts;
import cistern.gel.image.Density;
import cistern.gel.lanes.LanePlace;
import cistern.gel.membrane.Sheet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Finds the bands of a gel's lanes. */
public final class BandFinder {
  private final Facts facts;

  /** A finder under some facts. */
  public BandFinder(Facts facts) {
    this.facts = facts;
  }

  /** The bands of the lanes at some places. */
  public GelBands find(Density density, Sheet sheet, List<LanePlace> places) {
    if (places.isEmpty()) {
      return new GelBands(0, Tilt.of(List.of(), List.of(), density.width()), List.of(), 0);
    }
    int[] rows = rows(density, sheet, places);
    List<LaneGroups> groups = groups(density, places, rows);
    Gel gel = new Gel(density, places, rows[0], rows[1]);
    GelBands all = bands(gel, groups);
    int reach = (int) Math.ceil(facts.number("gel.mark.profile-reach") * all.sigma());
    List<MarkProfile> marks = mark(all).find(all.lanes(), groups, rows[0], reach);
    if (marks.isEmpty()) {
      return all;
    }
    double mostOwn = facts.number("gel.mark.own");
    double mostShift = facts.number("gel.mark.shift") * all.sigma();
    for (MarkProfile m : marks) {
      groups = groups.stream().map(g -> m.takenFrom(g, rows[0], mostOwn, mostShift)).toList();
    }
    GelBands rest = bands(gel, groups);
    ApplicationMark mark = mark(rest);
    List<LaneBands> lanes = rest.lanes().stream().map(l -> mark.without(l, marks)).toList();
    return new GelBands(rest.sigma(), rest.tilt(), lanes, marks.size());
  }

  /** What stays the same while marks are taken away. */
  private record Gel(Density density, List<LanePlace> places, int firstRow, int endRow) {
    int[] rows() {
      return new int[] {firstRow, endRow};
    }
  }

  /** The bands of the lanes as their groups show them, marks among them. */
  private GelBands bands(Gel gel, List<LaneGroups> groups) {
    List<LanePlace> places = gel.places;
    int height = gel.density.height();
    double guess = facts.number("gel.bands.first-sigma") * height;
    List<Bend> bends = bends(groups, BandFilter.of(guess, guess));
    List<Double> columns = places.stream().map(LanePlace::xCentre).toList();
    Tilt tilt = Tilt.of(columns, bends, gel.density.width());
    List<Bend> settled = settle(places, bends, tilt);
    double sigma = sigma(groups, settled, places, guess);
    BandFilter filter = BandFilter.of(facts.number("gel.bands.filter-scale") * sigma, sigma);
    int noiseReach = (int) (facts.number("gel.bands.noise-reach") * height);
    Tracing tracing = new Tracing(filter, (int) facts.number("gel.bands.trimmed"), noiseReach);
    List<LaneTrace> traces = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      traces.add(tracing.trace(places.get(i), groups.get(i), settled.get(i), gel.firstRow));
    }
    BandMeasure measure = BandMeasure.of(facts, filter, traces);
    double darkest = facts.number("gel.lane.darkest");
    List<LaneBands> lanes = new ArrayList<>();
    double gap = gap(places);
    for (int i = 0; i < places.size(); i++) {
      BesideLane beside =
          BesideLane.of(
              gel.density,
              filter,
              new BesideLane.Beside(places.get(i), gap),
              settled.get(i).slope(),
              gel.rows());
      lanes.add(
          new LaneBands(
              traces.get(i),
              settled.get(i),
              LaneCondition.of(gel.density, places.get(i), gel.rows(), darkest),
              ended(measure.bands(traces.get(i)), beside, gel, sigma)));
    }
    return new GelBands(sigma, tilt, lanes, 0);
  }

  /** The bare membrane between two lanes, the median; at least a pixel. */
  private static double gap(List<LanePlace> places) {
    double[] gaps = new double[places.size() - 1];
    for (int i = 0; i < gaps.length; i++) {
      LanePlace a = places.get(i);
      LanePlace b = places.get(i + 1);
      gaps[i] = b.xCentre() - a.xCentre() - 0.5 * (a.width() + b.width());
    }
    Arrays.sort(gaps);
    return gaps.length == 0 ? 1 : Math.max(1, gaps[gaps.length / 2]);
  }

  /** The bands without those at the ends of the lane that go on beside it. */
  private List<Band> ended(List<Band> bands, BesideLane beside, Gel gel, double sigma) {
    double end = facts.number("gel.ends.reach") * (gel.endRow - gel.firstRow);
    double share = facts.number("gel.ends.beside");
    return bands.stream()
        .filter(
            b ->
                Math.min(b.y() - gel.firstRow, gel.endRow - b.y()) > end
                    || beside.answer(b.y(), 3 * sigma) < share * b.height())
        .toList();
  }

  private ApplicationMark mark(GelBands gel) {
    double fanSlope = gel.lanes().stream().mapToDouble(l -> l.place().slope()).average().orElse(0);
    return new ApplicationMark(
        -fanSlope,
        new ApplicationMark.Limits(
            facts.number("gel.mark.lean"),
            facts.number("gel.mark.reach") * gel.sigma(),
            facts.number("gel.mark.share"),
            (int) facts.number("gel.mark.fewest"),
            facts.number("gel.mark.whole"),
            facts.number("gel.mark.present"),
            facts.number("gel.mark.residue"),
            facts.number("gel.mark.foot")));
  }

  private List<LaneGroups> groups(Density density, List<LanePlace> places, int[] rows) {
    int count = (int) facts.number("gel.bands.groups");
    double inner = facts.number("gel.bands.inner-width");
    return places.stream().map(p -> LaneGroups.of(density, p, count, inner, rows)).toList();
  }

  private int[] rows(Density density, Sheet sheet, List<LanePlace> places) {
    double inset = facts.number("gel.sheet.inset") * density.height();
    int from = 0;
    int to = density.height();
    for (LanePlace p : places) {
      from = Math.max(from, sheet.firstRow(p.xCentre(), inset));
      to = Math.min(to, sheet.lastRow(p.xCentre(), inset));
    }
    return new int[] {from, Math.max(from + 16, to)};
  }

  private List<Bend> bends(List<LaneGroups> groups, BandFilter filter) {
    double margin = facts.number("gel.bands.margin");
    List<Bend> bends = new ArrayList<>();
    for (LaneGroups g : groups) {
      bends.add(
          new Straightening(g, filter, facts.number("gel.bands.strong"), margin * g.rows())
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
      double astray = Math.abs(b.slope() - own) * places.get(i).width() / 2;
      boolean isOff = astray > facts.number("gel.bands.tilt-tolerance");
      boolean isSeen = b.weight() > facts.number("gel.lane.tilt-seen");
      settled.add(
          b.weight() < facts.number("gel.bands.tilt-weight") || isOff
              ? new Bend(own, 0, b.weight(), isOff && isSeen ? astray : 0)
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
    return Math.max(
        0.8, new CommonSigma(scales, guess, facts.number("gel.bands.vote")).of(profiles));
  }
}
