package cistern.gel.bands;

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

  Band withAlone(double chance) {
    return new Band(row, y, height, strength, noise, probability, chance);
  }
}
