package cistern.gel.membrane;

import cistern.gel.image.Picture;
import java.util.Arrays;

/**
 * What is joined to a corner of the picture by samples of the corners' brightness, which may drift
 * with the light from sample to sample.
 */
final class Surround {
  private final Picture picture;
  private final double tolerance;
  private final Light light;

  /**
   * How the light falls on the surround.
   *
   * <p>drift: share of a sample in the brightness that is expected of the next one
   *
   * <p>farthest: how far a sample may be from the corners, tolerances
   */
  enum Light {
    /** The same everywhere. */
    EVEN(0, 1),
    /** Falling off slowly. */
    UNEVEN(0.2, 3);

    private final double drift;
    private final double farthest;

    Light(double drift, double farthest) {
      this.drift = drift;
      this.farthest = farthest;
    }
  }

  Surround(Picture picture, double tolerance, Light light) {
    this.picture = picture;
    this.tolerance = tolerance;
    this.light = light;
  }

  /** True where the surround lies; nowhere when the corners differ from each other. */
  boolean[] toMask() {
    int w = picture.width();
    int h = picture.height();
    boolean[] mask = new boolean[w * h];
    int[] corners = {0, w - 1, (h - 1) * w, h * w - 1};
    double[] seen = Arrays.stream(corners).mapToDouble(this::corner).sorted().toArray();
    double middle = 0.5 * (seen[1] + seen[2]);
    int[] queue = new int[w * h];
    int tail = 0;
    float[] expected = new float[w * h];
    for (int c : corners) {
      if (Math.abs(corner(c) - middle) <= Math.sqrt(light.farthest) * tolerance && !mask[c]) {
        mask[c] = true;
        expected[c] = (float) (light == Light.EVEN ? middle : corner(c));
        queue[tail++] = c;
      }
    }
    if (tail < 3) {
      return new boolean[w * h];
    }
    for (int head = 0; head < tail; head++) {
      tail = spread(queue, head, tail, new Flood(mask, expected, middle));
    }
    return isLeaking(mask) ? new boolean[w * h] : mask;
  }

  /** Whether the flood reached the middle of the picture, which a surround does not. */
  private boolean isLeaking(boolean[] mask) {
    int w = picture.width();
    int h = picture.height();
    for (int y = h * 3 / 10; y < h * 7 / 10; y++) {
      for (int x = w * 3 / 10; x < w * 7 / 10; x++) {
        if (mask[y * w + x]) {
          return true;
        }
      }
    }
    return false;
  }

  /** What was reached, the brightness expected there, and that of the corners. */
  private static final class Flood {
    private final boolean[] mask;
    private final float[] expected;
    private final double middle;

    Flood(boolean[] mask, float[] expected, double middle) {
      this.mask = mask;
      this.expected = expected;
      this.middle = middle;
    }
  }

  private int spread(int[] queue, int head, int end, Flood flood) {
    int w = picture.width();
    int h = picture.height();
    int at = queue[head];
    int x = at % w;
    int y = at / w;
    int tail = end;
    int[] next = {
      x > 0 ? at - 1 : -1, x + 1 < w ? at + 1 : -1, y > 0 ? at - w : -1, y + 1 < h ? at + w : -1
    };
    for (int n : next) {
      if (n >= 0 && !flood.mask[n]) {
        int sample = picture.at(n % w, n / w);
        boolean isAlike =
            Math.abs(sample - flood.expected[at]) <= tolerance
                && Math.abs(sample - flood.middle) <= light.farthest * tolerance;
        if (isAlike) {
          flood.mask[n] = true;
          flood.expected[n] =
              (float) (flood.expected[at] + light.drift * (sample - flood.expected[at]));
          queue[tail++] = n;
        }
      }
    }
    return tail;
  }

  /** Mean of the 3 × 3 samples at a corner. */
  private double corner(int at) {
    int w = picture.width();
    int h = picture.height();
    int x = Math.clamp(at % w, 1, Math.max(1, w - 2));
    int y = Math.clamp(at / w, 1, Math.max(1, h - 2));
    double sum = 0;
    for (int dy = -1; dy <= 1; dy++) {
      for (int dx = -1; dx <= 1; dx++) {
        sum += picture.at(Math.clamp(x + dx, 0, w - 1), Math.clamp(y + dy, 0, h - 1));
      }
    }
    return sum / 9;
  }
}
