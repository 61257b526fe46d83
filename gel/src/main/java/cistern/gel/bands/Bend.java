package cistern.gel.bands;

/**
 * How a band runs across its lane: at an offset t from the lane's middle it lies slope·t + curve·t²
 * lower.
 *
 * @param slope rows per column
 * @param curve rows per column²
 * @param weight how well the lane's own texture shows it, from 0
 * @param astray by how many rows the lane's own bands depart at its edge, when they were not
 *     followed
 */
record Bend(double slope, double curve, double weight, double astray) {
  double at(double offset) {
    return offset * (slope + curve * offset);
  }

  /** The largest departure from the straight line over a lane of a width, pixels. */
  double sag(double width) {
    return Math.abs(curve) * width * width / 4;
  }
}
