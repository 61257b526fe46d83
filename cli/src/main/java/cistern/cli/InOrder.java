package cistern.cli;

import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/**
 * Many things done on all processors, and taken in their order: a few are done ahead, so that
 * memory does not grow with their number.
 */
final class InOrder<T> implements AutoCloseable {

  /** How many are done ahead for each processor. */
  private static final int AHEAD = 8;

  private final Consumer<T> taken;
  private final Queue<Future<T>> ahead = new ArrayDeque<>();
  private final int processors = Runtime.getRuntime().availableProcessors();
  private final ExecutorService workers = Executors.newFixedThreadPool(processors);

  InOrder(Consumer<T> taken) {
    this.taken = taken;
  }

  /** Has one more done, and takes the first when enough are ahead. */
  void add(Callable<T> work) {
    ahead.add(workers.submit(work));
    if (ahead.size() > AHEAD * processors) {
      take();
    }
  }

  /** Takes all that were added. */
  void finish() {
    while (!ahead.isEmpty()) {
      take();
    }
  }

  private void take() {
    try {
      taken.accept(ahead.remove().get());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException failure
          ? failure
          : new IllegalStateException(e.getCause());
    }
  }

  @Override
  public void close() {
    workers.shutdownNow();
  }
}
