package cistern.puncture.bleeding;

import cistern.finding.Printed;

/**
 * A stretch of hours as a guideline prints it.
 *
 * @param least the shortest
 * @param most the longest, at least the shortest
 */
public record Hours(double least, double most) {

  private static final int HOURS_PER_DAY = 24;
  private static final int FEW_DAYS = 4;

  /** Checks the order. */
  public Hours {
    if (!(least >= 0) || !(most >= least)) {
      throw new IllegalArgumentException("hours are ordered and not negative");
    }
  }

  /** What holds both. */
  Hours and(Hours other) {
    return new Hours(Math.min(least, other.least), Math.max(most, other.most));
  }

  /** As printed, {@code 24 h}, {@code 48–72 h}, {@code 7 d}. */
  public String toText() {
    if (most == 0) {
      return "no interval";
    }
    if (least == most) {
      return toText(least);
    }
    return Printed.decimals(least, least == Math.rint(least) ? 0 : 1) + "–" + toText(most);
  }

  private static String toText(double hours) {
    boolean isDays = hours >= FEW_DAYS * HOURS_PER_DAY && hours % HOURS_PER_DAY == 0;
    String plain = Printed.decimals(hours, hours == Math.rint(hours) ? 0 : 1) + " h";
    return isDays ? plain + " (" + Printed.decimals(hours / HOURS_PER_DAY, 0) + " d)" : plain;
  }
}
