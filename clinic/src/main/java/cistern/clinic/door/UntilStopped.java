package cistern.clinic.door;

import java.util.concurrent.CountDownLatch;

/** Waits until the process is asked to stop, and lets everything be closed before it ends. */
final class UntilStopped {

  private UntilStopped() {}

  /** Returns when the process is asked to stop; it then ends when the calling thread does. */
  static void await() {
    Thread caller = Thread.currentThread();
    CountDownLatch stop = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  stop.countDown();
                  try {
                    caller.join();
                  } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                  }
                }));
    try {
      stop.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
