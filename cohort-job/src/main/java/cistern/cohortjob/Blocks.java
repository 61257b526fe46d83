package cistern.cohortjob;

import cistern.cohortjob.InputFile.Kind;
import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;

/** The input of a cohort as blocks of lines: work-ups, rows of tables, rows of Parquet. */
final class Blocks {

  /** Divisions a core, so that a slow one does not keep the others waiting. */
  private static final int DIVISIONS_A_CORE = 4;

  private Blocks() {}

  /** The blocks of some files, in their order. */
  static JavaRDD<Block> read(SparkSession spark, List<InputFile> files) {
    JavaSparkContext engine = JavaSparkContext.fromSparkContext(spark.sparkContext());
    JavaRDD<Block> all = engine.emptyRDD();
    for (int i = 0; i < files.size(); i++) {
      all = all.union(read(spark, engine, files.get(i), i));
    }
    return all;
  }

  private static JavaRDD<Block> read(
      SparkSession spark, JavaSparkContext engine, InputFile file, int number) {
    if (file.kind() == Kind.PARQUET) {
      Dataset<Row> rows = spark.read().parquet(file.path());
      String heading = RowText.line(List.of(rows.columns()));
      return blocks(
          rows.toJavaRDD().map(RowText::line), new Lines(file, number, heading, ',', false));
    }
    JavaRDD<String> lines =
        engine.textFile(file.path(), DIVISIONS_A_CORE * engine.defaultParallelism());
    if (file.kind() == Kind.LINES) {
      return blocks(lines, new Lines(file, number, "", '\n', false));
    }
    List<String> first = lines.take(1);
    String heading = first.isEmpty() ? "\n" : first.getFirst() + "\n";
    return blocks(lines, new Lines(file, number, heading, sign(heading), true));
  }

  private static JavaRDD<Block> blocks(JavaRDD<String> lines, Lines of) {
    return lines.mapPartitionsWithIndex((division, all) -> new LineBlocks(of, division, all), true);
  }

  /**
   * What the lines of a file are.
   *
   * @param file that they stand in
   * @param number of the file
   * @param heading of the table, with its line break; empty where each line is a work-up
   * @param sign between the cells of a table
   * @param isHeadingWithin whether the heading is the first of the lines
   */
  record Lines(InputFile file, int number, String heading, char sign, boolean isHeadingWithin)
      implements Serializable {}

  /** The sign that stands most often in a line of headings, as for a long table elsewhere. */
  private static char sign(String heading) {
    return Stream.of('\t', ';', ',')
        .max(Comparator.comparingLong(s -> heading.chars().filter(c -> c == s).count()))
        .orElseThrow();
  }
}
