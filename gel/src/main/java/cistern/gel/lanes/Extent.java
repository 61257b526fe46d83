package cistern.gel.lanes;

/**
 * From where to where the membrane reaches at mid-height.
 *
 * @param from first column
 * @param to one past the last
 * @param isInside whether there is surround beside it in the picture
 */
public record Extent(double from, double to, boolean isInside) {

  /** The same in other units: columns divided by a number. */
  Extent dividedBy(double pixels) {
    return new Extent(from / pixels, to / pixels, isInside);
  }
}
