package cistern.report.cohort;

import java.io.PrintStream;
import java.time.Duration;
import java.util.function.LongSupplier;

/** How far a long command has come: how many, how fast, and how long it will still take. */
public final class Progress {

  private static final Duration BETWEEN = Duration.ofSeconds(1);
  private static final double NANOS = 1e9;

  private final PrintStream err;
  private final LongSupplier clock;
  private final String doing;
  private final long began;
  private long said;

  /**
   * Progress that begins now.
   *
   * @param err where it is said
   * @param clock in nanoseconds
   * @param doing what is done, as in {@code Interpreted}
   */
  public Progress(PrintStream err, LongSupplier clock, String doing) {
    this.err = err;
    this.clock = clock;
    this.doing = doing;
    this.began = clock.getAsLong();
    this.said = began;
  }

  /** Says how many are done of an unknown number, unless it was just said. */
  public void say(long done) {
    if (isDue()) {
      err.printf("%s %,d, %,.0f a second%n", doing, done, rate(done));
    }
  }

  /** Says how many of all are done, unless it was just said. */
  public void say(long done, long all) {
    if (isDue()) {
      double left = (all - done) / Math.max(rate(done), 1e-9);
      err.printf(
          "%s %,d of %,d, %,.0f a second, %s left%n", doing, done, all, rate(done), time(left));
    }
  }

  /**
   * Says how many are done and how much of an input of unknown length that is, unless it was just
   * said.
   *
   * @param share of the input, from 0 to 1
   */
  public void say(long done, double share) {
    if (share > 0 && isDue()) {
      double left = seconds() * (1 - Math.min(share, 1)) / share;
      err.printf(
          "%s %,d, %.0f %% of the input, %,.0f a second, %s left%n",
          doing, done, 100 * Math.min(share, 1), rate(done), time(left));
    }
  }

  /** Says that everything is done. */
  public void finish(long done) {
    err.printf("%s %,d in %s, %,.0f a second%n", doing, done, time(seconds()), rate(done));
  }

  private boolean isDue() {
    long now = clock.getAsLong();
    if (now - said < BETWEEN.toNanos()) {
      return false;
    }
    said = now;
    return true;
  }

  private double seconds() {
    return (clock.getAsLong() - began) / NANOS;
  }

  private double rate(long done) {
    return done / Math.max(seconds(), 1e-3);
  }

  private static String time(double seconds) {
    long whole = Math.round(Math.ceil(seconds));
    return whole < 60
        ? whole + " s"
        : whole < 3600
            ? whole / 60 + " min " + whole % 60 + " s"
            : whole / 3600 + " h " + whole % 3600 / 60 + " min";
  }
}
