package cistern.exchange.json;

import cistern.fact.Facts;

/**
 * How large an input may be, so that a wrong or hostile file costs neither memory nor time.
 *
 * @param mebibytes size of the file, MiB
 * @param values number of values in it
 * @param depth objects and lists within each other
 * @param numberLength characters of one number
 * @param bounds of numbers and times
 */
public record InputLimits(
    int mebibytes, int values, int depth, int numberLength, ValueBounds bounds) {

  private static final int BYTES_PER_MEBIBYTE = 1 << 20;

  /** The limits of some facts. */
  public static InputLimits of(Facts facts) {
    return new InputLimits(
        (int) facts.number("input.file-size"),
        (int) facts.number("input.values"),
        (int) facts.number("input.depth"),
        (int) facts.number("input.number-length"),
        ValueBounds.of(facts));
  }

  /** The largest size of a file, bytes. */
  public int bytes() {
    return mebibytes * BYTES_PER_MEBIBYTE;
  }
}
