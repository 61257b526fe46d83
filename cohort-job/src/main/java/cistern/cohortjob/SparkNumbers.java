package cistern.cohortjob;

import cistern.exchange.intake.CohortNumbers;
import cistern.exchange.intake.CohortNumbers.Part;
import cistern.exchange.table.NumberTable;
import java.io.PrintStream;
import java.io.Serial;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.util.LongAccumulator;
import org.jspecify.annotations.Nullable;

/** The numbers of one long table on the engine; only sums leave a division. */
final class SparkNumbers implements Serializable {

  @Serial private static final long serialVersionUID = 1L;

  /** Lines that are computed together. */
  private static final int LINES = 8_192;

  private static final int DIVISIONS_A_CORE = 4;
  private static final int LEVELS = 2;

  private final CohortRules rules;
  private final boolean hasChances;
  private final NumberTable table;
  private final String heading;
  private transient @Nullable CohortNumbers numbers;

  private SparkNumbers(CohortRules rules, boolean hasChances, NumberTable table, String heading) {
    this.rules = rules;
    this.hasChances = hasChances;
    this.table = table;
    this.heading = heading;
  }

  private synchronized CohortNumbers numbers() {
    CohortNumbers made = numbers;
    if (made == null) {
      made = CohortNumbers.of(rules.facts(), hasChances);
      numbers = made;
    }
    return made;
  }

  /** What the lines of a division give. */
  private Part read(Iterator<String> lines, LongAccumulator rows) {
    Part sum = Part.NONE;
    while (lines.hasNext()) {
      List<String> taken = new ArrayList<>(LINES);
      while (lines.hasNext() && taken.size() < LINES) {
        String line = lines.next();
        if (!line.equals(heading)) {
          taken.add(line);
        }
      }
      Part part = numbers().read(table, taken, 0);
      rows.add(part.summary().rows());
      sum = sum.merge(part);
    }
    return sum;
  }

  /**
   * Runs.
   *
   * @param run the engine and where it speaks
   * @param files of one heading
   * @return the sums; nothing when a table lacks what every number needs, which is said
   */
  static Optional<Part> sum(Run run, CohortRules rules, boolean hasChances, List<InputFile> files) {
    Part sum = Part.NONE;
    CohortNumbers here = CohortNumbers.of(rules.facts(), hasChances);
    for (InputFile file : files) {
      JavaRDD<String> lines = lines(run, file);
      String heading = heading(run, file, lines);
      NumberTable table = here.table(heading);
      if (!CohortNumbers.isEnough(table)) {
        run.err().println(file.name() + ": it has no column albumin.csf or no albumin.serum.");
        return Optional.empty();
      }
      Broadcast<SparkNumbers> sent =
          run.engine().broadcast(new SparkNumbers(rules, hasChances, table, heading));
      LongAccumulator rows = run.rows();
      sum =
          sum.merge(
              lines
                  .mapPartitions(all -> List.of(sent.value().read(all, rows)).iterator())
                  .treeAggregate(Part.NONE, Part::merge, Part::merge, LEVELS));
    }
    return Optional.of(sum);
  }

  /**
   * Where it runs.
   *
   * @param spark the engine
   * @param err where it speaks
   * @param rows is told how many are done
   */
  record Run(SparkSession spark, PrintStream err, LongAccumulator rows) {
    private JavaSparkContext engine() {
      return JavaSparkContext.fromSparkContext(spark.sparkContext());
    }
  }

  private static JavaRDD<String> lines(Run run, InputFile file) {
    return file.kind() == InputFile.Kind.PARQUET
        ? run.spark().read().parquet(file.path()).toJavaRDD().map(RowText::line)
        : run.engine().textFile(file.path(), DIVISIONS_A_CORE * run.engine().defaultParallelism());
  }

  private static String heading(Run run, InputFile file, JavaRDD<String> lines) {
    if (file.kind() == InputFile.Kind.PARQUET) {
      return RowText.line(List.of(run.spark().read().parquet(file.path()).columns())).strip();
    }
    List<String> first = lines.take(1);
    return first.isEmpty() ? "" : first.getFirst();
  }
}
