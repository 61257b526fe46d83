package cistern.gel.membrane;

import cistern.gel.image.Picture;
import java.util.Arrays;

/** What is joined to a corner of the picture by samples of the corners' brightness. */
final class Surround {
  private final Picture picture;
  private final double tolerance;

  Surround(Picture picture, double tolerance) {
    this.picture = picture;
    this.tolerance = tolerance;
  }

  /** True where the surround lies; nowhere when the corners differ from each other. */
  boolean[] toMask() {
    int w = picture.width();
    int h = picture.height();
    boolean[] mask = new boolean[w * h];
    int[] corners = {0, w - 1, (h - 1) * w, h * w - 1};
    double[] light = Arrays.stream(corners).mapToDouble(this::corner).sorted().toArray();
    double middle = 0.5 * (light[1] + light[2]);
    int[] queue = new int[w * h];
    int tail = 0;
    for (int c : corners) {
      if (Math.abs(corner(c) - middle) <= tolerance && !mask[c]) {
        mask[c] = true;
        queue[tail++] = c;
      }
    }
    if (tail < 3) {
      return new boolean[w * h];
    }
    for (int head = 0; head < tail; head++) {
      tail = spread(queue, head, tail, mask, middle);
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

  private int spread(int[] queue, int head, int end, boolean[] mask, double middle) {
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
      if (n >= 0 && !mask[n] && Math.abs(picture.at(n % w, n / w) - middle) <= tolerance) {
        mask[n] = true;
        queue[tail++] = n;
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
