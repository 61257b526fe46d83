package cistern.gel.bands;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A band of a lane.
 *
 * @param row of the strip
 * @param y its middle, row of the picture
 * @param height its full width at half maximum, rows of the picture
 * @param strength OD above its ground
 * @param noise how many times the lane's noise it stands out
 * @param probability that it is real
 * @param alone the chance that the other lane has no counterpart
 */
public record Band(
    int row,
    double y,
    double height,
    double strength,
    double noise,
    double probability,
    double alone) {

  /** The chance from which something is likelier than not. */
  public static final double LIKELY = 0.5;

  /** The least chance of a band that counts at all, or may be the counterpart of another. */
  public static final double SUSPECTED = 0.08;

  /** Whether it is likely real. */
  public boolean isLikely() {
    return probability >= LIKELY;
  }

  /**
   * The usual height of a lane's likely bands, their median, in rows of the picture; nothing where
   * there are too few to know it.
   */
  public static OptionalDouble usualHeight(List<Band> bands, int fewest) {
    double[] heights =
        bands.stream().filter(Band::isLikely).mapToDouble(Band::height).sorted().toArray();
    return heights.length < fewest
        ? OptionalDouble.empty()
        : OptionalDouble.of(heights[heights.length / 2]);
  }

  Band withAlone(double chance) {
    return new Band(row, y, height, strength, noise, probability, chance);
  }
}
