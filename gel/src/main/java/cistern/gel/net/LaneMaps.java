package cistern.gel.net;

import java.util.Arrays;

/**
 * What LaneNet says of a picture, at a scale of its own: where lanes are, and where their middles.
 */
public final class LaneMaps {
  private static final int LONG_SIDE = 768;
  private static final int BLOCK = 32;
  private static final double LEFT_OUT = 0.005;

  /** In a frame flatter than this share of the long side the net overlooks whole lanes. */
  private static final double FLATTEST = 0.5;

  private final int width;
  private final float[] core;
  private final float[] middle;
  private int usedWidth;
  private int usedHeight;
  private int left;
  private int top;
  private double scale = 1;

  LaneMaps(int width, int height, float[] core, float[] middle) {
    this.width = width;
    this.core = core;
    this.middle = middle;
    this.usedWidth = width;
    this.usedHeight = height;
  }

  /** The maps of a picture. */
  public static LaneMaps of(Nets nets, GreyPlane plane) {
    double scale = LONG_SIDE / (double) Math.max(plane.width(), plane.height());
    int w = (int) Math.max(1, Math.round(plane.width() * scale));
    int h = (int) Math.max(1, Math.round(plane.height() * scale));
    float[] small = plane.resized(w, h);
    Frame frame = Frame.around(w, h);
    LaneMaps maps = nets.lanes(frame.of(small, w, h), frame.wide(), frame.high());
    maps.left = frame.left() / 2;
    maps.top = frame.top() / 2;
    maps.usedWidth = w / 2;
    maps.usedHeight = h / 2;
    maps.scale = scale / 2;
    return maps;
  }

  /** What the net sees: the picture, and around it as much of its median as the net wants. */
  private record Frame(int wide, int high, int left, int top) {

    static Frame around(int w, int h) {
      int least = (int) (FLATTEST * Math.max(w, h));
      return new Frame(blocks(w, least), blocks(h, least), before(w, least), before(h, least));
    }

    private static int blocks(int length, int least) {
      return (Math.max(length, least) + BLOCK - 1) / BLOCK * BLOCK;
    }

    /** An even number, since the net halves what it sees. */
    private static int before(int length, int least) {
      return Math.max(0, least - length) / 4 * 2;
    }

    /** The picture stretched to the net's range, in a frame of its median. */
    float[] of(float[] small, int w, int h) {
      float[] sorted = small.clone();
      Arrays.sort(sorted);
      float low = sorted[(int) (LEFT_OUT * (sorted.length - 1))];
      float span = sorted[(int) ((1 - LEFT_OUT) * (sorted.length - 1))] - low + 1e-3f;
      float[] framed = new float[wide * high];
      Arrays.fill(framed, stretched(sorted[sorted.length / 2], low, span));
      for (int y = 0; y < h; y++) {
        for (int x = 0; x < w; x++) {
          framed[(top + y) * wide + left + x] = stretched(small[y * w + x], low, span);
        }
      }
      return framed;
    }
  }

  private static float stretched(float v, float low, float span) {
    return 2 * Math.clamp((v - low) / span, -0.05f, 1.05f) - 1;
  }

  /** Columns that show the picture. */
  public int width() {
    return usedWidth;
  }

  /** Rows that show the picture. */
  public int height() {
    return usedHeight;
  }

  /** Columns or rows of the maps in one of the picture. */
  public double scale() {
    return scale;
  }

  /** The chance of a lane. */
  public float core(int x, int y) {
    return core[(top + y) * width + left + x];
  }

  /** The chance of a lane's middle. */
  public float middle(int x, int y) {
    return middle[(top + y) * width + left + x];
  }
}
