package cistern.gel.synthetic;

import cistern.gel.synthetic.LaneContent.Hump;
import cistern.gel.synthetic.LaneContent.TrueBand;
import cistern.gel.synthetic.PairTruth.Case;
import java.util.ArrayList;
import java.util.List;

/** Draws what the CSF and the serum of one invented person hold. */
final class PersonDraw {
  private static final double LEAST_GAP = 2.5;
  private final Level level;
  private final Draw draw;
  private final double sigma;
  private final int top;
  private final int bottom;
  private final boolean alkalineUp;

  /** CSF and serum of a person, and the counts that are true of them. */
  record Person(LaneContent csf, LaneContent serum, int csfOnly, int shared, int serumOnly) {}

  PersonDraw(Level level, Draw draw, double sigma, int[] reach) {
    this.level = level;
    this.draw = draw;
    this.sigma = sigma;
    this.top = reach[0];
    this.bottom = reach[1];
    this.alkalineUp = draw.chance(0.5);
  }

  Person draw(Case kind) {
    Hump hump = hump();
    double floor = draw.between(0.01, 0.12);
    List<Double> taken = new ArrayList<>();
    return switch (kind) {
      case NONE, UNREADABLE -> person(hump, floor, List.of(), List.of(), List.of());
      case ONE -> person(hump, floor, bands(1, taken), List.of(), List.of());
      case LOCAL -> person(hump, floor, bands(draw.count(2, 14), taken), List.of(), List.of());
      case MIXED ->
          person(
              hump,
              floor,
              bands(draw.count(2, 9), taken),
              bands(draw.count(1, 5), taken),
              List.of());
      case SYSTEMIC -> person(hump, floor, List.of(), bands(draw.count(2, 7), taken), List.of());
      case LADDER -> {
        List<TrueBand> rungs = ladder();
        rungs.forEach(r -> taken.add(r.y()));
        List<TrueBand> beside = draw.chance(0.15) ? bands(draw.count(2, 4), taken) : List.of();
        yield person(hump, floor, beside, rungs, List.of());
      }
      case NEAR_MISS -> nearMiss(hump, floor, taken);
      case SERUM_ONLY ->
          person(
              hump,
              floor,
              bands(draw.chance(0.5) ? 0 : draw.count(2, 8), taken),
              bands(draw.count(1, 5), taken),
              bands(1, taken));
      case MISPAIRED -> mispaired(hump, floor, taken);
    };
  }

  private Person nearMiss(Hump hump, double floor, List<Double> taken) {
    List<TrueBand> csf = bands(draw.count(2, 8), taken);
    List<TrueBand> shared = bands(draw.count(1, 4), taken);
    double side = draw.chance(0.5) ? 1 : -1;
    double y = csf.getFirst().y() + side * sigma * draw.between(level.bands().miss(), 5);
    List<TrueBand> serum =
        isFree(y, csf.subList(1, csf.size()), shared) ? List.of(band(y)) : List.of();
    return person(hump, floor, csf, shared, serum);
  }

  private boolean isFree(double y, List<TrueBand> csf, List<TrueBand> shared) {
    List<TrueBand> all = new ArrayList<>(csf);
    all.addAll(shared);
    return all.stream().allMatch(b -> Math.abs(b.y() - y) > level.bands().miss() * sigma);
  }

  /** The CSF of one person beside the serum of another, who has bands of his own. */
  private Person mispaired(Hump hump, double floor, List<Double> taken) {
    List<TrueBand> csf = bands(draw.count(2, 9), taken);
    List<TrueBand> serum = bands(draw.count(2, 7), new ArrayList<>());
    LaneContent other = new LaneContent(draw.between(0.03, 0.12), hump(), serum);
    return new Person(new LaneContent(floor, hump, csf), other, csf.size(), 0, serum.size());
  }

  private Person person(
      Hump hump, double floor, List<TrueBand> csf, List<TrueBand> shared, List<TrueBand> serum) {
    LaneContent ground = new LaneContent(floor, hump, List.of());
    List<TrueBand> sharedInSerum = new ArrayList<>();
    for (TrueBand b : shared) {
      double height = Math.max(level.bands().least(), b.height() * draw.logNormal(1, 0.25));
      sharedInSerum.add(
          new TrueBand(
              b.y() + 0.15 * draw.normal(), height, b.sigma(), b.lorentz(), b.asymmetry()));
    }
    return new Person(
        ground.with(csf).with(shared),
        ground.with(sharedInSerum).with(serum),
        csf.size(),
        shared.size(),
        serum.size());
  }

  private Hump hump() {
    double span = bottom - top;
    double centre = top + span * draw.between(0.35, 0.65);
    return new Hump(
        draw.logNormal(0.22, 0.6), centre, span * draw.between(0.1, 0.22), draw.between(0.75, 1.3));
  }

  private List<TrueBand> bands(int n, List<Double> taken) {
    List<TrueBand> result = new ArrayList<>();
    int tries = 0;
    while (result.size() < n && tries++ < 4000) {
      double along = Math.sqrt(draw.between(0, 1));
      double y = alkalineUp ? bottom - along * (bottom - top) : top + along * (bottom - top);
      if (taken.stream().allMatch(t -> Math.abs(t - y) >= LEAST_GAP * sigma)) {
        taken.add(y);
        result.add(band(y));
      }
    }
    return result;
  }

  private TrueBand band(double y) {
    double height =
        Math.max(
            level.bands().least(), draw.logNormal(level.bands().median(), level.bands().spread()));
    return new TrueBand(
        y,
        height,
        sigma * draw.logNormal(1, 0.06),
        draw.between(0, 0.35),
        draw.between(-0.15, 0.15));
  }

  private List<TrueBand> ladder() {
    int n = draw.count(4, 8);
    double step = sigma * draw.between(3.5, 8);
    double start = draw.between(top, bottom - n * step);
    double height = draw.logNormal(0.55, 0.2);
    List<TrueBand> result = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double envelope = Math.exp(-0.5 * Math.pow((i - n / 2.0) / (n / 2.5), 2));
      result.add(
          new TrueBand(
              start + i * step + 0.15 * draw.normal(), height * envelope + 0.1, sigma, 0.1, 0));
    }
    return result;
  }
}
