package cistern.clinic.launch;

import java.util.concurrent.CountDownLatch;

/**
 * Waits until the process is asked to stop. It is opened before everything else, so that it is
 * closed after everything else: only then does the process end.
 */
final class ShutdownLatch implements AutoCloseable {

  private final CountDownLatch asked = new CountDownLatch(1);
  private final CountDownLatch closed = new CountDownLatch(1);

  private ShutdownLatch() {}

  /** Listens from now on. */
  static ShutdownLatch listen() {
    ShutdownLatch stop = new ShutdownLatch();
    Runtime.getRuntime().addShutdownHook(new Thread(stop::letClose));
    return stop;
  }

  private void letClose() {
    asked.countDown();
    await(closed);
  }

  /** Returns when the process is asked to stop. */
  void await() {
    await(asked);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    closed.countDown();
  }
}
