package cistern.architecture.broken.inside;

import java.time.Clock;
import java.time.Instant;
import java.util.Random;
import java.util.UUID;

/** Prints, reads a clock, draws chance and keeps state. */
final class Untidy {

  static final int[] HANDED_OUT = {1};

  static int changing = 1;

  private Untidy() {}

  static void print() {
    System.out.println("printed");
  }

  static long clock() {
    changing++;
    return Instant.now().getEpochSecond() + System.nanoTime() + Clock.systemUTC().millis();
  }

  static String chance() {
    return UUID.randomUUID() + " " + new Random().nextInt() + " " + Math.random();
  }
}
