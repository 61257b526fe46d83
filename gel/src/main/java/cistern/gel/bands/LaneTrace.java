package cistern.gel.bands;

import cistern.gel.net.GreyPlane;
import cistern.gel.net.PairMaps;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The stain along a lane, measured in the picture: what a person checks a band by.
 *
 * <p>od: OD of each row of the strip; ground: OD beside the lane
 */
public final class LaneTrace {
  private static final int ROWS = PairMaps.ROWS;

  /** Rows of the strip within which a band's ground is looked for. */
  private static final int REACH = 48;

  /** Median of absolute deviations to σ, of a Gaussian. */
  private static final double MAD_TO_SIGMA = 1.4826;

  /** The least noise that a lane is taken to have, OD. */
  private static final double LEAST_NOISE = 1e-4;

  /** Rows of the strip within which the top of a band is looked for. */
  private static final int TOP = 3;

  /** Rows by which the middle of a band may lie off where the net sees it. */
  private static final double OFF = 2;

  /** A shoulder is as high as these shares of its band, at least and at most. */
  private static final double LOW = 0.2;

  private static final double HIGH = 0.9;

  /** Usual heights between a band and its shoulder, at least and at most. */
  static final double NEAR = 0.6;

  private static final double FAR = 1.6;

  /** How much a shoulder is bent at least: over the band's own bend, and over the noise. */
  private static final double BENT = 0.1;

  private static final double CLEAR = 8;

  private final Strip strip;
  private final double[] od;
  private final double ground;
  private final double noise;
  private final double saturated;

  private LaneTrace(Strip strip, double[] od, double ground, double saturated) {
    this.strip = strip;
    this.od = od;
    this.ground = ground;
    this.noise = noise(od);
    this.saturated = saturated;
  }

  /**
   * How densities are told.
   *
   * @param isDark whether stain is dark
   * @param darkest share of white below which all is equally dark
   * @param full OD from which a pixel is as dark as can be
   */
  public record Scale(GreyPlane plane, boolean isDark, double darkest, double full) {
    double of(double light) {
      return plane.density(light, isDark, darkest);
    }

    /** The light of the plane from which a pixel is as dark as can be. */
    double fullLight() {
      return plane.light(full, isDark, darkest);
    }
  }

  /** The trace of a strip. */
  public static LaneTrace of(Strip strip, Scale scale) {
    float[] profile = strip.profile();
    double[] od = new double[ROWS];
    for (int y = 0; y < ROWS; y++) {
      od[y] = scale.of(profile[y]);
    }
    int dark = 0;
    double full = scale.fullLight();
    int columns = Strip.endColumn() - Strip.firstColumn();
    for (int y = 0; y < ROWS; y++) {
      for (int x = Strip.firstColumn(); x < Strip.endColumn(); x++) {
        double light = strip.at(y, x);
        dark += (scale.isDark() ? light <= full : light >= full) ? 1 : 0;
      }
    }
    double saturated = (double) dark / (ROWS * columns);
    return new LaneTrace(strip, od, scale.of(strip.beside()), saturated);
  }

  /** From second differences, which bands hardly touch. */
  private static double noise(double[] od) {
    double[] d = new double[ROWS - 2];
    for (int y = 0; y < d.length; y++) {
      d[y] = Math.abs(od[y] - 2 * od[y + 1] + od[y + 2]);
    }
    Arrays.sort(d);
    return Math.max(LEAST_NOISE, MAD_TO_SIGMA * d[d.length / 2] / Math.sqrt(6));
  }

  /** The strip that it was measured in. */
  public Strip strip() {
    return strip;
  }

  /** Share of the lane's pixels that are as dark as the picture can show. */
  public double saturated() {
    return saturated;
  }

  /** OD of the lane over what lies beside it, the median of its rows: bands hardly touch it. */
  public double load() {
    double[] inner = Arrays.copyOfRange(od, ROWS / 8, ROWS - ROWS / 8);
    Arrays.sort(inner);
    return inner[inner.length / 2] - ground;
  }

  /** The row near a row at which the lane is darkest. */
  private int top(int row) {
    int top = row;
    for (int y = Math.max(0, row - TOP); y <= Math.min(ROWS - 1, row + TOP); y++) {
      top = od[y] > od[top] ? y : top;
    }
    return top;
  }

  /** OD at a row over its ground, the higher of the two feet. */
  public double above(int row) {
    int top = top(Math.clamp(row, 0, ROWS - 1));
    return od[top] - Math.max(foot(top, -1), foot(top, 1));
  }

  private double foot(int top, int way) {
    double least = od[top];
    for (int y = top; y >= 0 && y < ROWS && Math.abs(y - top) <= REACH; y += way) {
      least = Math.min(least, od[y]);
    }
    return least;
  }

  /** The band whose middle the net sees at a row of the strip. */
  Band band(int row, double probability) {
    int top = top(row);
    double strength = Math.max(0, above(row));
    double half = od[top] - strength / 2;
    double up = edge(top, half, -1);
    double down = edge(top, half, 1);
    double height = Math.max(1, down - up) * strip.rows().step();
    double middle = (up + down) / 2;
    double y = strip.rows().at(Math.abs(middle - row) < OFF ? middle : row);
    return new Band(row, y, height, strength, strength / noise, probability, 0);
  }

  /**
   * The row of a shoulder of a band: bent like a band beside one that is stronger, without a peak
   * of its own. A thick band's edges are as high as its middle, and are none.
   *
   * @param row the band's middle
   * @param usual how high the lane's bands usually are, rows of the strip
   */
  OptionalInt shoulder(int row, double usual) {
    int top = top(row);
    int reach = (int) Math.max(2, Math.round(usual / 3));
    double least = Math.max(BENT * -bend(top, reach), CLEAR * noise);
    double strength = above(row);
    int best = -1;
    for (int y = (int) (row - FAR * usual); y <= row + FAR * usual; y++) {
      double share = 1 - (od[top] - od[Math.clamp(y, 0, ROWS - 1)]) / strength;
      boolean isBeside = Math.abs(y - top) > NEAR * usual && share > LOW && share < HIGH;
      if (isBeside && -bend(y, reach) > least && isParted(top, y, reach)) {
        least = -bend(y, reach);
        best = y;
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  /** Whether the trace bends the other way between two rows. */
  private boolean isParted(int one, int other, int reach) {
    return IntStream.range(Math.min(one, other), Math.max(one, other))
        .anyMatch(y -> bend(y, reach) > 0);
  }

  /** How the trace is bent at a row; below 0 on a band. */
  private double bend(int row, int reach) {
    int y = Math.clamp(row, reach, ROWS - 1 - reach);
    return od[y - reach] - 2 * od[y] + od[y + reach];
  }

  /** Where the trace falls to a value, between rows. */
  private double edge(int top, double value, int way) {
    int y = top;
    while (y + way >= 0 && y + way < ROWS && Math.abs(y - top) < REACH && od[y + way] > value) {
      y += way;
    }
    int next = Math.clamp(y + way, 0, ROWS - 1);
    double fall = od[y] - od[next];
    double share = fall > 1e-9 ? Math.clamp((od[y] - value) / fall, 0, 1) : 0.5;
    return y + way * share;
  }
}
