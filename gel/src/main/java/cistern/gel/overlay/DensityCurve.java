package cistern.gel.overlay;

import cistern.fact.Facts;
import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;
import cistern.gel.reading.LaneReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The stain along a lane from the top of a window to its end, measured in the picture as the reader
 * measures it: the middle of the lane without its most extreme columns. A person checks a band by
 * it.
 *
 * @param od optical density of stretches of equal height
 */
public record DensityCurve(List<Double> od) {
  /** How far the columns that are read reach from the lane's middle, in its widths. */
  private static final double REACH = 1 / 3.0;

  private static final int COLUMNS = 11;
  private static final int TRIMMED = 2;

  /** So many stretches at most: more are not seen on a screen. */
  private static final int MOST = 1280;

  /** Copies the densities. */
  public DensityCurve {
    od = List.copyOf(od);
  }

  /** The curve of a lane of the window's reading. */
  public static DensityCurve of(LaneWindow window, Picture picture, LaneReading lane, Facts facts) {
    double darkest = facts.number("gel.image.darkest");
    int stretches = Math.min(MOST, window.height());
    List<Double> od = new ArrayList<>();
    for (int i = 0; i < stretches; i++) {
      double row = (i + 0.5) * window.height() / stretches - 0.5;
      od.add(density(light(window, picture, lane, row), window.polarity(), darkest));
    }
    return new DensityCurve(od);
  }

  /** The light of a row, which leans as the lane does. */
  private static double light(LaneWindow window, Picture picture, LaneReading lane, double row) {
    double[] light = new double[COLUMNS];
    for (int i = 0; i < COLUMNS; i++) {
      double widths = REACH * (2.0 * i / (COLUMNS - 1) - 1);
      double y = row - lane.slope() * widths * lane.width();
      light[i] = window.light(picture, window.x(lane, row, widths), y);
    }
    Arrays.sort(light);
    return Arrays.stream(light, TRIMMED, COLUMNS - TRIMMED).average().orElseThrow();
  }

  private static double density(double light, Polarity polarity, double darkest) {
    double share =
        switch (polarity) {
          case DARK_ON_LIGHT -> light;
          case LIGHT_ON_DARK -> 1 - light;
        };
    return -Math.log10((share + darkest) / (1 + darkest));
  }
}
