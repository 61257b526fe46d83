package cistern.gel.bands;

/**
 * A band of a lane.
 *
 * @param y middle in rows of the picture, on the lane's middle line
 * @param height OD above its ground
 * @param sigma width as a Gaussian's σ, pixels
 * @param signalToNoise height over the noise of the lane there
 * @param crossing the lower quartile of the columns' answers over the height: about 1 for a band
 *     that crosses the lane, about 0 for a spot
 * @param unevenness spread of the columns' answers over the height, beyond what noise explains
 * @param relief height over the relief of the gel's lanes
 * @param texture height over the usual size of the lane's filter answers
 * @param shade how far stronger bands beside it outshine it, from 0
 * @param probability that it is real
 */
public record Band(
    double y,
    double height,
    double sigma,
    double signalToNoise,
    double crossing,
    double unevenness,
    double relief,
    double texture,
    double shade,
    double probability) {

  Band withProbability(double p) {
    return new Band(
        y, height, sigma, signalToNoise, crossing, unevenness, relief, texture, shade, p);
  }

  /** Full width at half of the height, pixels. */
  public double fullWidth() {
    return 2 * Math.sqrt(2 * Math.log(2)) * sigma;
  }
}
