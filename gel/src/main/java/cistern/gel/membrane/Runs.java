package cistern.gel.membrane;

import cistern.gel.image.Picture;

/**
 * The inside of the membrane cut into narrow upright runs of columns: the mean sample of each run,
 * row by row.
 *
 * <p>means: one profile a run, from left to right, in shares of white
 */
final class Runs {
  /** Part of the shorter side that is left out at the edges of a membrane. */
  private static final int PART_OF_SHEET = 40;

  /** The same where the edges are not known and a corner of the surround may be in the picture. */
  private static final int PART_OF_UNKNOWN = 9;

  private final float[][] means;

  Runs(float[][] means) {
    this.means = means;
  }

  float[][] means() {
    return means;
  }

  static final int COUNT = 64;

  static Runs of(Picture picture, Sheet sheet) {
    boolean isUnknown = sheet.equals(Sheet.of(picture.width(), picture.height()));
    int part = isUnknown ? PART_OF_UNKNOWN : PART_OF_SHEET;
    int inset = Math.max(2, Math.min(picture.width(), picture.height()) / part);
    double middleRow = picture.height() / 2.0;
    int left = Math.max(sheet.firstColumn(0, inset), sheet.firstColumn(2 * middleRow, inset));
    int right = Math.min(sheet.lastColumn(0, inset), sheet.lastColumn(2 * middleRow, inset));
    int top = Math.max(sheet.firstRow(0, inset), sheet.firstRow(picture.width(), inset));
    int bottom = Math.min(sheet.lastRow(0, inset), sheet.lastRow(picture.width(), inset));
    int run = Math.max(1, (right - left) / COUNT);
    int count = Math.max(1, Math.min(COUNT, (right - left) / run));
    float[][] means = new float[count][Math.max(1, bottom - top)];
    for (int y = top; y < bottom; y++) {
      for (int r = 0; r < count; r++) {
        int sum = 0;
        for (int x = left + r * run; x < left + (r + 1) * run; x++) {
          sum += picture.at(x, y);
        }
        means[r][y - top] = (float) sum / run / Picture.WHITE;
      }
    }
    return new Runs(means);
  }

  int count() {
    return means.length;
  }

  /** Each run's profile smoothed over a short window less the same over a long one. */
  float[][] bandPass(int shortReach, int longReach) {
    float[][] pass = new float[means.length][];
    for (int r = 0; r < means.length; r++) {
      float[] fine = smooth(means[r], shortReach);
      float[] coarse = smooth(means[r], longReach);
      for (int y = 0; y < fine.length; y++) {
        fine[y] -= coarse[y];
      }
      pass[r] = fine;
    }
    return pass;
  }

  static float[] smooth(float[] v, int reach) {
    int n = v.length;
    double[] sum = new double[n + 1];
    for (int y = 0; y < n; y++) {
      sum[y + 1] = sum[y] + v[y];
    }
    float[] mean = new float[n];
    for (int y = 0; y < n; y++) {
      int from = Math.max(0, y - reach);
      int to = Math.min(n, y + reach + 1);
      mean[y] = (float) ((sum[to] - sum[from]) / (to - from));
    }
    return mean;
  }

  /**
   * How much runs an eighth of the picture apart look alike at the scale of lanes: large when the
   * profiles cross the lanes, which go on from run to run.
   */
  double likeness() {
    float[][] pass = bandPass(means[0].length / 150, means[0].length / 15);
    int apart = Math.max(1, means.length / 8);
    double sum = 0;
    for (int r = 0; r + apart < pass.length; r++) {
      for (int y = 0; y < pass[r].length; y++) {
        sum += pass[r][y] * pass[r + apart][y];
      }
    }
    return sum / ((double) (pass.length - apart) * pass[0].length);
  }

  /** Skewness of the runs' fine detail, −1 for narrow dark bands to 1 for narrow light ones. */
  double skew() {
    float[][] pass = bandPass(1, Math.max(6, means[0].length / 60));
    double signed = 0;
    double size = 1e-12;
    for (float[] p : pass) {
      for (float v : p) {
        double cube = (double) v * v * v;
        signed += cube;
        size += Math.abs(cube);
      }
    }
    return signed / size;
  }

  /**
   * Correlation over the runs of their mean with their spread along the lane, −1…1: runs in lanes
   * vary more than runs between them, so below 0 lanes are darker than their ground.
   */
  double contrast() {
    int n = means.length;
    double[] mean = new double[n];
    double[] spread = new double[n];
    for (int r = 0; r < n; r++) {
      float[] soft = smooth(means[r], means[r].length / 50);
      double sum = 0;
      double square = 0;
      for (float v : soft) {
        sum += v;
        square += (double) v * v;
      }
      mean[r] = sum / soft.length;
      spread[r] = Math.sqrt(Math.max(0, square / soft.length - mean[r] * mean[r]));
    }
    return correlation(mean, spread);
  }

  private static double correlation(double[] a, double[] b) {
    double ma = java.util.Arrays.stream(a).average().orElse(0);
    double mb = java.util.Arrays.stream(b).average().orElse(0);
    double ab = 0;
    double aa = 1e-12;
    double bb = 1e-12;
    for (int i = 0; i < a.length; i++) {
      ab += (a[i] - ma) * (b[i] - mb);
      aa += (a[i] - ma) * (a[i] - ma);
      bb += (b[i] - mb) * (b[i] - mb);
    }
    return ab / Math.sqrt(aa * bb);
  }
}
