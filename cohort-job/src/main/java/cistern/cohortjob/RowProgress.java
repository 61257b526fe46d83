package cistern.cohortjob;

import cistern.report.cohort.Progress;
import java.io.PrintStream;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerTaskEnd;
import org.apache.spark.util.LongAccumulator;

/** How far the engine has come, said when a division is done. */
final class RowProgress extends SparkListener {

  private final PrintStream err;
  private final LongAccumulator rows;
  private Progress progress;
  private long all;
  private boolean isSaid;

  /**
   * Progress that is to begin.
   *
   * @param err where it is said
   * @param rows is told how many are done, wherever they are done
   */
  RowProgress(PrintStream err, LongAccumulator rows) {
    this.err = err;
    this.rows = rows;
    this.progress = new Progress(err, System::nanoTime, "Read");
  }

  /** Is told how many rows are done, wherever they are done. */
  LongAccumulator rows() {
    return rows;
  }

  /**
   * Begins a pass.
   *
   * @param doing what is done, as in {@code Interpreted}
   * @param expected how many rows; 0 when nobody knows yet
   */
  synchronized void begin(String doing, long expected) {
    rows.reset();
    all = expected;
    isSaid = true;
    progress = new Progress(err, System::nanoTime, doing);
  }

  /** Says how many rows were done, how fast. */
  synchronized void finish(long done) {
    progress.finish(done);
    isSaid = false;
  }

  @Override
  public synchronized void onTaskEnd(SparkListenerTaskEnd ended) {
    long done = rows.value();
    if (!isSaid || done == 0) {
      return;
    }
    if (all == 0) {
      progress.say(done);
    } else {
      progress.say(Math.min(done, all), all);
    }
  }
}
