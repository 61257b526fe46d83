package cistern.exchange.ucum;

import java.util.Optional;

/** What becomes of a number in one unit when another is needed. */
public sealed interface Conversion {

  /**
   * It is multiplied.
   *
   * @param ratio the exact factor
   */
  record By(Ratio ratio) implements Conversion {}

  /**
   * The text is no UCUM unit.
   *
   * @param meant a unit that may be meant: to be suggested, never applied
   */
  record Unknown(Optional<String> meant) implements Conversion {}

  /**
   * The unit measures something else.
   *
   * @param meant a unit that may be meant: to be suggested, never applied
   */
  record OtherDimension(Optional<String> meant) implements Conversion {}
}
