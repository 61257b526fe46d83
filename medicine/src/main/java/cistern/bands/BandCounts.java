package cistern.bands;

import java.util.OptionalInt;

/**
 * Bands counted in the two lanes.
 *
 * @param csfOnly bands in CSF without counterpart in serum
 * @param shared bands alike in both
 * @param serumOnly bands in serum without counterpart in CSF
 */
public record BandCounts(OptionalInt csfOnly, OptionalInt shared, OptionalInt serumOnly) {

  /** Nothing counted. */
  public static final BandCounts NONE =
      new BandCounts(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty());

  /** All three counted. */
  public static BandCounts of(int csfOnly, int shared, int serumOnly) {
    return new BandCounts(
        OptionalInt.of(csfOnly), OptionalInt.of(shared), OptionalInt.of(serumOnly));
  }
}
