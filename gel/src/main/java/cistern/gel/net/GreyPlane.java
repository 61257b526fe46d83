package cistern.gel.net;

import cistern.gel.image.Picture;

/**
 * A picture on the scale that the nets know: 0 at its darkest samples and 1 at its lightest, a few
 * of which are left out on either side.
 */
public final class GreyPlane {
  private static final double LEFT_OUT = 0.003;
  private static final float BEYOND = 0.05f;
  private static final int SPARSE = 3;

  private final int width;
  private final int height;
  private final float[] light;
  private final double low;
  private final double span;

  private GreyPlane(int width, int height, float[] light, double low, double span) {
    this.width = width;
    this.height = height;
    this.light = light;
    this.low = low;
    this.span = span;
  }

  /** The plane of a picture. */
  public static GreyPlane of(Picture picture) {
    int[] counts = new int[Picture.WHITE + 1];
    int all = 0;
    for (int y = 0; y < picture.height(); y += SPARSE) {
      for (int x = 0; x < picture.width(); x += SPARSE) {
        counts[picture.at(x, y)]++;
        all++;
      }
    }
    double low = quantile(counts, LEFT_OUT * all);
    double span = Math.max(1, quantile(counts, (1 - LEFT_OUT) * all) - low);
    float[] light = new float[picture.width() * picture.height()];
    for (int y = 0, i = 0; y < picture.height(); y++) {
      for (int x = 0; x < picture.width(); x++, i++) {
        light[i] = Math.clamp((float) ((picture.at(x, y) - low) / span), -BEYOND, 1 + BEYOND);
      }
    }
    return new GreyPlane(picture.width(), picture.height(), light, low, span);
  }

  private static int quantile(int[] counts, double rank) {
    int value = 0;
    for (long below = counts[0]; below <= rank && value < Picture.WHITE; below += counts[value]) {
      value++;
    }
    return value;
  }

  /** Columns. */
  public int width() {
    return width;
  }

  /** Rows. */
  public int height() {
    return height;
  }

  /** The light at a place between pixels; beyond the edge what the edge shows. */
  public float at(double x, double y) {
    double u = Math.clamp(x, 0, width - 1.0);
    double v = Math.clamp(y, 0, height - 1.0);
    int i = Math.min((int) u, Math.max(0, width - 2));
    int j = Math.min((int) v, Math.max(0, height - 2));
    int right = Math.min(1, width - 1);
    int down = height > 1 ? width : 0;
    float a = (float) (u - i);
    float b = (float) (v - j);
    int k = j * width + i;
    float upper = light[k] + a * (light[k + right] - light[k]);
    float lower = light[k + down] + a * (light[k + down + right] - light[k + down]);
    return upper + b * (lower - upper);
  }

  /**
   * The optical density that a light stands for.
   *
   * @param isDark whether stain is dark
   * @param darkest share of white below which all is equally dark, above 0
   */
  public double density(double value, boolean isDark, double darkest) {
    double share = Math.clamp((low + value * span) / Picture.WHITE, 0, 1);
    return -Math.log10(((isDark ? share : 1 - share) + darkest) / (1 + darkest));
  }

  /** The light that stands for an optical density: the other way round. */
  public double light(double density, boolean isDark, double darkest) {
    double share = Math.pow(10, -density) * (1 + darkest) - darkest;
    return ((isDark ? share : 1 - share) * Picture.WHITE - low) / span;
  }

  /**
   * The plane at another size: each pixel the mean of what it covers, or between its neighbours.
   */
  float[] resized(int w, int h) {
    return turned(turned(light, width, height, w), height, w, h);
  }

  /** Every row at another length, and rows become columns. */
  private static float[] turned(float[] from, int w, int h, int length) {
    float[] to = new float[length * h];
    double step = (double) w / length;
    for (int i = 0; i < length; i++) {
      double first = i * step;
      double end = first + step;
      int a = (int) first;
      int b = Math.min(w, (int) Math.ceil(end - 1e-9));
      double at = (i + 0.5) * step - 0.5;
      for (int y = 0; y < h; y++) {
        to[i * h + y] =
            step > 1 ? mean(from, y * w, a, b, first, end) : between(from, y * w, w, at);
      }
    }
    return to;
  }

  private static float mean(float[] from, int row, int a, int b, double first, double end) {
    double sum = 0;
    for (int x = a; x < b; x++) {
      sum += from[row + x] * (Math.min(end, x + 1.0) - Math.max(first, x));
    }
    return (float) (sum / (end - first));
  }

  private static float between(float[] from, int row, int w, double at) {
    double x = Math.clamp(at, 0, w - 1.0);
    int i = Math.min((int) x, Math.max(0, w - 2));
    int next = Math.min(i + 1, w - 1);
    return (float) (from[row + i] + (x - i) * (from[row + next] - from[row + i]));
  }
}
