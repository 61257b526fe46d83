package cistern.finding;

/** A probability in words: whole chances in 10, 100 or 1000, never none and never all. */
public final class Chances {

  private static final int FEWEST = 10;
  private static final int RAREST = 1000;
  private static final double NEARLY_ONE = 0.95;

  private Chances() {}

  /**
   * A probability as a share, {@code 4 chances in 10}, {@code less than 1 chance in 1000}.
   *
   * @param probability 0 to 1
   */
  public static String of(double probability) {
    if (!(probability >= 0 && probability <= 1)) {
      throw new IllegalArgumentException("a probability lies between 0 and 1");
    }
    if (probability < 1.0 / RAREST) {
      return "less than 1 chance in " + RAREST;
    }
    if (probability > 1 - 1.0 / RAREST) {
      return "more than %d chances in %d".formatted(RAREST - 1, RAREST);
    }
    int base = RAREST;
    while (base > FEWEST && isRoundEnough(probability, base / FEWEST)) {
      base /= FEWEST;
    }
    long chances = Math.round(probability * base);
    return chances == 1 ? "1 chance in " + base : chances + " chances in " + base;
  }

  /** Whether the rarer side of a probability is at least nearly one chance of so many. */
  private static boolean isRoundEnough(double probability, int base) {
    return Math.min(probability, 1 - probability) * base >= NEARLY_ONE;
  }

  /**
   * What measurement error leaves open: {@code seen from this measurement, 4 chances in 10 to lie
   * above}.
   *
   * @param probabilityAbove 0 to 1
   */
  public static String toLieAbove(double probabilityAbove) {
    return "seen from this measurement, " + of(probabilityAbove) + " to lie above";
  }
}
