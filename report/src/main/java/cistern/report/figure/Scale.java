package cistern.report.figure;

/** Where a value stands along a figure. */
public sealed interface Scale permits LinearScale, LogScale {

  /** The first value of the scale. */
  double from();

  /** The last value of the scale. */
  double to();

  /** The place of a value in user units; values outside stand at the nearer end. */
  double at(double value);

  /** Whether the value lies before the scale begins. */
  default boolean isUnder(double value) {
    return value < from();
  }

  /** Whether the value lies after the scale ends. */
  default boolean isOver(double value) {
    return value > to();
  }

  /** Whether the value can be shown where it is. */
  default boolean isOn(double value) {
    return !isUnder(value) && !isOver(value);
  }
}
