package cistern.gel.image;

/**
 * How a picture is turned before it is read, so that its mirror image and its negative are read
 * through the same samples and give the same answer.
 *
 * @param isMirrored whether left and right are exchanged: more detail then lies on the left
 * @param isInverted whether light and dark are exchanged: what stands out up and down is then dark
 */
public record Stance(boolean isMirrored, boolean isInverted) {
  private static final int RUNS = 96;
  private static final int[] HEIGHTS = {100, 50, 25};

  /** The stance that the picture's own samples ask for. */
  public static Stance of(Picture picture) {
    return new Stance(moment(picture) > 0, skew(picture) > 0);
  }

  /** Detail up and down, weighted by the distance from the middle: its sign turns in a mirror. */
  private static long moment(Picture picture) {
    int w = picture.width();
    int apart = Math.max(1, picture.height() / 200);
    long moment = 0;
    for (int y = apart; y < picture.height(); y += apart) {
      for (int x = 0; x < w; x++) {
        long detail = Math.abs(picture.at(x, y) - picture.at(x, y - apart));
        moment += (2L * x - w + 1) * detail;
      }
    }
    return moment;
  }

  /**
   * The third moment of what stands out up and down, over some heights: bands stand out more than
   * the ground between them, whatever the lanes and the surround are. Its sign turns in a negative.
   */
  private static double skew(Picture picture) {
    int run = Math.max(1, picture.width() / RUNS);
    int runs = picture.width() / run;
    double[][] means = new double[picture.height()][runs];
    for (int y = 0; y < means.length; y++) {
      for (int x = 0; x < runs * run; x++) {
        means[y][x / run] += (double) picture.at(x, y) / run / Picture.WHITE;
      }
    }
    double skew = 0;
    for (int part : HEIGHTS) {
      int apart = Math.max(2, means.length / part);
      for (int y = apart; y < means.length - apart; y++) {
        skew += cubes(means, y, apart);
      }
    }
    return skew;
  }

  /** Cubes of how a row stands out, less what the whole row does: that is a scratch or an edge. */
  private static double cubes(double[][] means, int y, int apart) {
    int runs = means[y].length;
    double[] out = new double[runs];
    double mean = 0;
    for (int x = 0; x < runs; x++) {
      out[x] = 2 * means[y][x] - means[y - apart][x] - means[y + apart][x];
      mean += out[x] / runs;
    }
    double cubes = 0;
    for (double d : out) {
      cubes += (d - mean) * (d - mean) * (d - mean);
    }
    return cubes;
  }

  /** The picture as it is read. */
  public Picture turn(Picture picture) {
    return isMirrored || isInverted ? picture.toTurned(isMirrored, isInverted) : picture;
  }
}
