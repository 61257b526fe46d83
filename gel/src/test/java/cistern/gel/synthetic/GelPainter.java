package cistern.gel.synthetic;

import cistern.gel.synthetic.GelMaker.LaneDraw;
import cistern.gel.synthetic.LaneContent.TrueBand;
import java.util.ArrayList;
import java.util.List;

/** Paints the sheet into a picture: geometry, membrane faults, optics, pose and sensor. */
final class GelPainter {
  private final Level level;
  private final Draw draw;
  private final Sheet sheet;
  private final double smile;
  private final double smileCentre;
  private final double wave;
  private final double wavePhase;
  private final double waveLength;
  private final double tilt;
  private final Pose pose;
  private final boolean surround;
  private final double lowEdge;

  /** The sheet: size in pixels, common lane width, lanes and the σ of a band. */
  record Sheet(int width, int height, double laneWidth, List<LaneDraw> lanes, double sigma) {}

  GelPainter(Level level, Draw draw, Sheet sheet) {
    this.level = level;
    this.draw = draw;
    this.sheet = sheet;
    Level.Geometry g = level.geometry();
    this.smile = g.smile() * draw.between(-1, 1);
    this.smileCentre = sheet.width * draw.between(0.4, 0.6);
    this.wave = g.wave() * draw.between(0, 1);
    this.wavePhase = draw.between(0, 6.28);
    this.waveLength = sheet.width * draw.between(0.3, 0.9);
    this.tilt = g.smile() * draw.between(-0.5, 0.5) / sheet.width;
    this.surround = draw.chance(g.surround());
    double angle = Math.toRadians(g.rotation() * draw.between(-1, 1));
    double scale = surround ? draw.between(0.84, 0.93) : 1.0;
    double p = g.perspective() / sheet.width;
    double[] lean = {p * draw.between(-1, 1), p * draw.between(-1, 1)};
    this.pose = Pose.of(angle, scale, lean, new double[] {sheet.width / 2.0, sheet.height / 2.0});
    this.lowEdge = draw.between(2, 4);
  }

  SyntheticGel paint(List<PairTruth> pairs) {
    int w = sheet.width;
    int h = sheet.height;
    float[] density = new float[w * h];
    boolean[] outside = new boolean[w * h];
    Membrane membrane = new Membrane(level, draw, sheet);
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        double gx = pose.x(x, y);
        double gy = pose.y(x, y);
        int i = y * w + x;
        outside[i] = surround && (gx < 0 || gy < 0 || gx >= w || gy >= h);
        if (!outside[i]) {
          density[i] = (float) (laneDensity(gx, gy) + membrane.at(gx, gy));
        }
      }
    }
    Optics optics = new Optics(level, draw, w, h);
    return optics.expose(density, outside, truths(), pairs);
  }

  private double displacement(double gx) {
    double half = sheet.width / 2.0;
    double t = (gx - smileCentre) / half;
    return smile * t * t + wave * Math.sin(wavePhase + 6.28 * gx / waveLength) + tilt * (gx - half);
  }

  private double laneDensity(double gx, double gy) {
    for (LaneDraw lane : sheet.lanes) {
      double across = Math.abs(gx - lane.x()) - sheet.laneWidth / 2;
      if (across < 12) {
        double q = axis(lane, gx, gy);
        double edge = 1 / (1 + Math.exp(across / lowEdge * 2));
        return edge * sample(lane.density(), q);
      }
    }
    return 0;
  }

  /** The place on the lane's own axis that the sheet's point shows. */
  private double axis(LaneDraw lane, double gx, double gy) {
    double mid = sheet.height / 2.0;
    return mid + (gy - displacement(gx) - lane.warp().shift() - mid) / lane.warp().stretch();
  }

  private static double sample(float[] v, double q) {
    int i = (int) Math.floor(q);
    if (i < 0 || i + 1 >= v.length) {
      return v[Math.clamp(i, 0, v.length - 1)];
    }
    double f = q - i;
    return v[i] * (1 - f) + v[i + 1] * f;
  }

  private List<LaneTruth> truths() {
    Pose forward = pose.inverse();
    List<LaneTruth> truths = new ArrayList<>();
    double mid = sheet.height / 2.0;
    for (LaneDraw lane : sheet.lanes) {
      double gy = mid;
      for (int k = 0; k < 5; k++) {
        gy += mid - forward.y(lane.x(), gy);
      }
      double x = forward.x(lane.x(), gy);
      double half = sheet.laneWidth / 2;
      double width = forward.x(lane.x() + half, gy) - forward.x(lane.x() - half, gy);
      List<Double> ys = new ArrayList<>();
      for (TrueBand band : lane.content().bands()) {
        double onSheet =
            mid
                + (band.y() - mid) * lane.warp().stretch()
                + lane.warp().shift()
                + displacement(lane.x());
        ys.add(forward.y(lane.x(), onSheet));
      }
      truths.add(new LaneTruth(lane.kind(), lane.pair(), x, width, ys.stream().sorted().toList()));
    }
    return truths;
  }
}
