package cistern.gel;

import cistern.gel.image.Picture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A clean gel of 900 by 700 pixels from a formula: lanes with a broad zone and bands where a test
 * puts them, on an even ground with a little grain. Densities in OD, places in pixels.
 */
final class PaintedGel {
  private static final int WIDTH = 900;
  private static final int HEIGHT = 700;
  private static final double PITCH = 90;
  private static final double HALF = 28;
  private static final double SIGMA = 3.5;
  private static final double TOP_LEAN = 0.01;

  /** A middle far off the gel, of a lane that holds nothing. */
  private static final double NOTHING = -1e6;

  private final List<Lane> lanes = new ArrayList<>();
  private final double left;
  private double markRow = Double.NEGATIVE_INFINITY;
  private double markLean;
  private double markSigma = 3;
  private double topRow = Double.NEGATIVE_INFINITY;
  private double scratchRow = Double.NEGATIVE_INFINITY;

  /**
   * How a lane came out.
   *
   * @param load its stain over the usual
   * @param widening the width of its bands over the usual
   * @param sag how far its bands sag from the lane's edges to its middle, rows
   * @param lean by how much its bands lie lower at its right edge than at its middle, rows
   */
  record Looks(double load, double widening, double sag, double lean) {
    static final Looks USUAL = new Looks(1, 1, 0, 0);
  }

  /** A lane: the middle of its broad zone, the rows of its bands, and how it came out. */
  private record Lane(double zone, List<Double> bands, Looks looks) {}

  /** A gel whose first lane's middle lies at a column. */
  PaintedGel(double left) {
    this.left = left;
  }

  /** One more lane to the right. */
  PaintedGel lane(double zone, double... bands) {
    return lane(Looks.USUAL, zone, bands);
  }

  /** One more lane to the right, which came out in its own way. */
  PaintedGel lane(Looks looks, double zone, double... bands) {
    lanes.add(new Lane(zone, Arrays.stream(bands).boxed().toList(), looks));
    return this;
  }

  /** The two lanes of a person who has bands only in the CSF. */
  PaintedGel person(double zone, double... bands) {
    return lane(zone, bands).lane(zone);
  }

  /** A place on which nothing was put. */
  PaintedGel nothing() {
    lanes.add(new Lane(NOTHING, List.of(), Looks.USUAL));
    return this;
  }

  /** The applicator's mark, at a row on the left edge, going down so many rows per column. */
  PaintedGel mark(double row, double lean) {
    markRow = row;
    markLean = lean;
    return this;
  }

  /** How broad the applicator's mark is: its σ. */
  PaintedGel broad(double sigma) {
    markSigma = sigma;
    return this;
  }

  /** The membrane's upper end, at a row on the left edge and leaning; the surround is darker. */
  PaintedGel top(double row) {
    topRow = row;
    return this;
  }

  /** A light scratch right across the gel. */
  PaintedGel scratch(double row) {
    scratchRow = row;
    return this;
  }

  Picture toPicture() {
    char[] samples = new char[WIDTH * HEIGHT];
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        double light = 0.9 * Math.pow(10, -density(x, y)) + 0.012 * grain(x, y);
        samples[y * WIDTH + x] = (char) Math.round(Picture.WHITE * Math.clamp(light, 0, 1));
      }
    }
    return Picture.of(WIDTH, HEIGHT, samples);
  }

  private double density(int x, int y) {
    if (y < topRow + TOP_LEAN * x) {
      return 0.35;
    }
    double d =
        0.03 + 0.25 * bell(y - markRow - markLean * x, markSigma) - 0.3 * bell(y - scratchRow, 2.5);
    for (int i = 0; i < lanes.size(); i++) {
      double middle = x - left - PITCH * i;
      double across = Math.abs(middle) - HALF;
      Lane lane = lanes.get(i);
      if (across < 12 && lane.zone > NOTHING) {
        d += inside(lane, y, middle / HALF) / (1 + Math.exp(across));
      }
    }
    return Math.max(0, d);
  }

  private static double inside(Lane lane, int y, double across) {
    double density = 0.08 + 0.3 * bell(y - lane.zone, 70);
    double sag = lane.looks.sag * (1 - across * across) + lane.looks.lean * across;
    for (double row : lane.bands) {
      density += 0.3 * bell(y - row - sag, SIGMA * lane.looks.widening);
    }
    return lane.looks.load * density;
  }

  private static double bell(double distance, double sigma) {
    double t = distance / sigma;
    return Math.exp(-0.5 * t * t);
  }

  /** Even in −½…½. */
  private static double grain(int x, int y) {
    double v = Math.sin(x * 12.9898 + y * 78.233) * 43758.5453;
    return v - Math.floor(v) - 0.5;
  }
}
