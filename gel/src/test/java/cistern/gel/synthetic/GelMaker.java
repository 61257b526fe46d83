package cistern.gel.synthetic;

import cistern.gel.synthetic.PairTruth.Case;
import java.util.ArrayList;
import java.util.List;

/** Makes an invented gel of a level from a seed. */
public final class GelMaker {
  private final Level level;
  private final Draw draw;
  private final double sigma;
  private final int width;
  private final int height;
  private final double laneWidth;
  private final double pitch;
  private final int places;
  private final double ceiling;
  private final List<Case> chosen;
  private final List<LaneDraw> laneDraws = new ArrayList<>();

  /** Where a lane lies: its kind and pair, and its middle in columns of the sheet. */
  record Berth(String kind, int pair, double x) {}

  /** How far a lane's axis is moved, in rows, and stretched. */
  record Warp(double shift, double stretch) {}

  /** One lane on the sheet: what it holds and the stained density along it. */
  static final class LaneDraw {
    private final Berth berth;
    private final float[] density;
    private final LaneContent content;
    private final Warp warp;

    LaneDraw(Berth berth, float[] density, LaneContent content, Warp warp) {
      this.berth = berth;
      this.density = density;
      this.content = content;
      this.warp = warp;
    }

    String kind() {
      return berth.kind();
    }

    int pair() {
      return berth.pair();
    }

    double x() {
      return berth.x();
    }

    float[] density() {
      return density;
    }

    LaneContent content() {
      return content;
    }

    Warp warp() {
      return warp;
    }
  }

  private GelMaker(Level level, long seed, List<Case> chosen) {
    this.level = level;
    this.chosen = chosen;
    this.draw = new Draw(seed * 1_000_003L + level.salt());
    double size = draw.between(0.8, 1.15);
    double wide = 1500 * size * draw.between(0.85, 1.1);
    double high = 1000 * size * draw.between(0.9, 1.1);
    this.sigma = draw.between(level.bands().sigmaMin(), level.bands().sigmaMax());
    int wanted = 2 * draw.count(3, 8);
    if (chosen.isEmpty()) {
      this.width = (int) wide;
      this.height = (int) high;
      this.places = wanted;
    } else {
      this.places = 2 * chosen.size() + 2;
      this.width = 95 * places;
      this.height = 560;
    }
    double margin = width * draw.between(0.04, 0.08);
    this.pitch = Math.min((width - 2 * margin) / places, draw.between(75, 170));
    this.laneWidth = pitch * draw.between(0.58, 0.86);
    this.ceiling = draw.between(0.85, 1.8);
  }

  /** The gel of a level and a seed: always the same. */
  public static SyntheticGel of(Level level, long seed) {
    return new GelMaker(level, seed, List.of()).make();
  }

  /** A small gel with these pairs and two controls: always the same. */
  public static SyntheticGel of(Level level, long seed, List<Case> pairs) {
    return new GelMaker(level, seed, List.copyOf(pairs)).make();
  }

  private SyntheticGel make() {
    int[] reach = {
      (int) (height * draw.between(0.08, 0.16)), (int) (height * draw.between(0.84, 0.93))
    };
    PersonDraw people = new PersonDraw(level, draw, sigma, reach);
    boolean controls = !chosen.isEmpty() || (places > 6 && draw.chance(0.4));
    int pairs = controls ? places / 2 - 1 : places / 2;
    double left = (width - pitch * (places - 1)) / 2;
    List<PairTruth> truths = new ArrayList<>();
    int lane = 0;
    for (int p = 0; p < pairs; p++) {
      Case kind = chosen.isEmpty() ? kind() : chosen.get(p);
      PersonDraw.Person person = people.draw(kind);
      truths.add(
          new PairTruth(
              kind, lane, lane + 1, person.csfOnly(), person.shared(), person.serumOnly()));
      double[] faint = {1, 1};
      if (kind == Case.UNREADABLE) {
        faint[draw.count(0, 1)] = 0;
      }
      laneDraws.add(lane("csf", p, left + pitch * lane++, person.csf(), faint[0]));
      laneDraws.add(lane("serum", p, left + pitch * lane++, person.serum(), faint[1]));
    }
    if (controls) {
      PersonDraw.Person control = people.draw(Case.LOCAL);
      laneDraws.add(lane("control", -1, left + pitch * lane++, control.csf(), 1));
      laneDraws.add(lane("control", -1, left + pitch * lane, people.draw(Case.NONE).csf(), 1));
    }
    return new GelPainter(
            level, draw, new GelPainter.Sheet(width, height, laneWidth, laneDraws, sigma))
        .paint(truths);
  }

  private LaneDraw lane(String kind, int pair, double x, LaneContent content, double presence) {
    double load = presence * draw.logNormal(1, level.faults().load());
    Warp warp =
        new Warp(
            level.geometry().shift() * draw.normal() / 2,
            1 + level.geometry().shift() * draw.normal() / 1500);
    double jitter = pitch * 0.02 * draw.normal();
    return new LaneDraw(
        new Berth(kind, pair, x + jitter), content.toDensity(height, load, ceiling), content, warp);
  }

  private Case kind() {
    double u = draw.between(0, 1);
    for (Case c : Case.values()) {
      u -= share(c);
      if (u < 0) {
        return c;
      }
    }
    return Case.NONE;
  }

  private static double share(Case kind) {
    return switch (kind) {
      case NONE -> 0.22;
      case LOCAL -> 0.26;
      case MIXED -> 0.12;
      case ONE, SYSTEMIC -> 0.1;
      case LADDER, MISPAIRED -> 0.05;
      case UNREADABLE -> 0.04;
      case NEAR_MISS, SERUM_ONLY -> 0.03;
    };
  }
}
