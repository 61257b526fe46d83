package cistern.gel.bands;

import cistern.gel.image.Density;
import cistern.gel.lanes.LanePlace;
import java.util.Arrays;

/**
 * What a lane's pixels themselves say about its fitness to be read.
 *
 * @param contrast density above the ground beside it, the ninth decile over its length, OD
 * @param load mean density above the ground beside it, OD
 * @param saturated share of its pixels as dark as the picture can show
 */
public record LaneCondition(double contrast, double load, double saturated) {
  private static final int STRIPS = 24;

  /**
   * @param rows first row and one past the last that count
   * @param darkest density from which a pixel counts as saturated, OD
   */
  static LaneCondition of(Density density, LanePlace place, int[] rows, double darkest) {
    double[] strips = new double[STRIPS];
    long dark = 0;
    long all = 0;
    double step = (double) (rows[1] - rows[0]) / STRIPS;
    for (int s = 0; s < STRIPS; s++) {
      double inside = 0;
      double left = 0;
      double right = 0;
      int n = 0;
      for (int y = rows[0] + (int) (s * step); y < rows[0] + (int) ((s + 1) * step); y++) {
        double centre = place.xCentre() + (y - density.height() / 2.0) * place.slope();
        int half = Math.max(1, (int) (0.35 * place.width()));
        for (int x = (int) centre - half; x <= (int) centre + half; x += 2) {
          double od = at(density, x, y);
          inside += od;
          dark += od >= darkest ? 1 : 0;
          n++;
        }
        left += at(density, (int) (centre - 0.58 * place.width()), y);
        right += at(density, (int) (centre + 0.58 * place.width()), y);
      }
      double count = Math.max(1, (int) ((s + 1) * step) - (int) (s * step));
      strips[s] = inside / Math.max(1, n) - 0.5 * (left + right) / count;
      all += n;
    }
    double load = Arrays.stream(strips).average().orElse(0);
    Arrays.sort(strips);
    return new LaneCondition(strips[STRIPS * 9 / 10], load, all == 0 ? 0 : (double) dark / all);
  }

  private static double at(Density density, int x, int y) {
    return density.at(Math.clamp(x, 0, density.width() - 1), y);
  }
}
