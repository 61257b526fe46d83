package cistern.clinic.cases;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands still until it is moved, and that can hold up whoever reads cases. */
public final class Held extends Clock {

  private static final String READER = "case-reader";

  private Instant now;
  private boolean isHeld;
  private boolean isFailing;

  /** A clock at a time. */
  public Held(Instant now) {
    this.now = now;
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return this;
  }

  @Override
  public synchronized Instant instant() {
    boolean isReader = Thread.currentThread().getName().equals(READER);
    while (isReader && isHeld) {
      try {
        wait();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
    if (isReader && isFailing) {
      throw new IllegalStateException("the test itself");
    }
    return now;
  }

  /** Moves it. */
  public synchronized void pass(Duration by) {
    now = now.plus(by);
  }

  /** Holds up whoever reads cases behind a page. */
  public synchronized void hold() {
    isHeld = true;
  }

  /** Lets nobody read cases behind a page. */
  public synchronized void fail() {
    isFailing = true;
  }

  /** Lets everybody read. */
  public synchronized void release() {
    isHeld = false;
    isFailing = false;
    notifyAll();
  }
}
