package cistern.cohortjob;

import cistern.cohort.CohortSummary;
import cistern.cohort.ColumnProfile;
import cistern.cohortjob.CohortTask.Answered;
import cistern.cohortjob.CohortTask.Twice;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.SparkSession;

/** The engine on this machine, divided as a test wants it. */
final class Engine implements AutoCloseable {

  private final SparkSession spark;
  private final JavaSparkContext context;

  Engine(int cores, int parallelism) {
    spark =
        SparkSession.builder()
            .appName("test")
            .master("local[" + cores + ",4]")
            .config("spark.ui.enabled", "false")
            .config("spark.driver.host", "127.0.0.1")
            .config("spark.driver.bindAddress", "127.0.0.1")
            .config("spark.default.parallelism", parallelism)
            .config("spark.sql.session.timeZone", "UTC")
            .getOrCreate();
    context = JavaSparkContext.fromSparkContext(spark.sparkContext());
  }

  /**
   * What a cohort gives.
   *
   * @param profile of its columns
   * @param summary of its work-ups
   * @param refused how many are left out
   * @param problems that are said
   * @param rows of the table, in order
   */
  record Result(
      ColumnProfile profile,
      CohortSummary summary,
      long refused,
      List<String> problems,
      List<String> rows) {}

  /**
   * Runs a cohort.
   *
   * @param areKilled whether the first attempt at every other division fails after it has begun
   */
  Result run(Path input, boolean areKilled) throws IOException {
    List<InputFile> files = InputFile.under(input.toString(), context.hadoopConfiguration());
    CohortTask task =
        new CohortTask(new CohortRules("", "", ""), Set.of("non-inflammatory"), Set.of("ms"));
    JavaRDD<Block> blocks = Blocks.read(spark, files);
    JavaRDD<Block> given = areKilled ? blocks.map(Engine::killed) : blocks;
    try (SparkCohort cohort =
        new SparkCohort(context, given, task, context.sc().longAccumulator())) {
      Map<String, Twice> twice = cohort.twice();
      JavaRDD<Answered> answers = cohort.answers(twice);
      Answered sum = cohort.sum(answers);
      List<String> rows = new ArrayList<>();
      SparkCohort.inOrder(answers).forEachRemaining(one -> rows.addAll(one.rows()));
      return new Result(cohort.profile(), sum.summary(), sum.refused(), cohort.problems(), rows);
    }
  }

  /** The blocks of a division, of which the first attempt fails. */
  private static Block killed(Block block) {
    if (TaskContext.get().attemptNumber() == 0 && block.at().division() % 2 == 1) {
      throw new IllegalStateException("killed by the test");
    }
    return block;
  }

  SparkSession spark() {
    return spark;
  }

  @Override
  public void close() {
    spark.stop();
  }
}
