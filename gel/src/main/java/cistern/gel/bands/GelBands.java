package cistern.gel.bands;

import java.util.List;

/**
 * The bands of all lanes of a gel.
 *
 * @param sigma the band width that the lanes share, pixels
 * @param tilt how bands slope over the gel
 * @param marks how many marks of the applicator were taken out
 */
public record GelBands(double sigma, Tilt tilt, List<LaneBands> lanes, int marks) {
  /** Copies the lanes. */
  public GelBands {
    lanes = List.copyOf(lanes);
  }
}
