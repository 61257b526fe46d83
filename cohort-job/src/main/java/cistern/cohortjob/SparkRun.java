package cistern.cohortjob;

import cistern.cohort.ColumnProfile;
import cistern.cohort.ColumnsMixedUp;
import cistern.cohort.SiteStudy;
import cistern.cohortjob.CohortTask.Answered;
import cistern.cohortjob.CohortTask.Twice;
import cistern.exchange.intake.CohortNumbers.Part;
import cistern.fact.Facts;
import cistern.report.cohort.CohortFolder;
import cistern.report.cohort.CohortReport;
import cistern.report.cohort.CohortReport.Groups;
import cistern.report.cohort.NumberJson;
import cistern.report.pdf.PdfDocument;
import cistern.report.pdf.SourceDate;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.SparkSession;

/** One run of a cohort on the engine, from its input to its folder. */
final class SparkRun {

  static final int DONE = 0;
  static final int INVALID = 3;
  static final int NOT_WRITTEN = 4;

  private final PrintStream err;
  private final SparkSession spark;
  private final JavaSparkContext engine;
  private final CohortRules rules;
  private final Facts facts;
  private final Groups groups;
  private final long seed;
  private final RowProgress progress;

  SparkRun(PrintStream err, SparkSession spark, CohortRules rules, Groups groups, long seed) {
    this.err = err;
    this.spark = spark;
    this.engine = JavaSparkContext.fromSparkContext(spark.sparkContext());
    this.rules = rules;
    this.facts = rules.facts();
    this.groups = groups;
    this.seed = seed;
    this.progress = new RowProgress(err, engine.sc().longAccumulator());
    engine.sc().addSparkListener(progress);
  }

  /**
   * Runs.
   *
   * @param input a file or a folder, wherever the engine reads from
   * @param out the folder of the results, on this machine
   * @return the exit code
   */
  int run(String input, Path out) {
    List<InputFile> files;
    try {
      files = InputFile.under(input, engine.hadoopConfiguration());
    } catch (IOException e) {
      err.println(input + ": it cannot be read.");
      return INVALID;
    }
    CohortTask task = new CohortTask(rules, groups.controls(), groups.cases());
    try (SparkCohort cohort =
        new SparkCohort(engine, Blocks.read(spark, files), task, progress.rows())) {
      return isRefused(cohort, input, files) ? INVALID : interpret(cohort, input, out);
    }
  }

  /**
   * Sums up the numbers alone.
   *
   * @param hasChances whether the chances to lie above a limit are computed
   * @return the exit code
   */
  int numbers(String input, Path out, boolean hasChances) {
    Optional<Part> sum;
    try {
      List<InputFile> files = InputFile.under(input, engine.hadoopConfiguration());
      progress.begin("Computed", 0);
      SparkNumbers.Run run = new SparkNumbers.Run(spark, err, progress.rows());
      sum = SparkNumbers.sum(run, rules, hasChances, files);
    } catch (IOException e) {
      err.println(input + ": it cannot be read.");
      return INVALID;
    }
    return sum.isEmpty() ? INVALID : written(input, out, sum.get());
  }

  private int written(String input, Path out, Part sum) {
    List<ColumnsMixedUp> mixedUp = ColumnsMixedUp.check(sum.profile(), facts);
    mixedUp.forEach(found -> err.println(input + ": " + found.text()));
    boolean isConfirmed = groups.columnsConfirmedBy().isPresent();
    if (sum.summary().rows() == 0 || (!mixedUp.isEmpty() && !isConfirmed)) {
      err.println("Nothing was written.");
      return INVALID;
    }
    progress.finish(sum.summary().rows());
    if (sum.refused() > 0) {
      err.printf("%s: %,d rows hold what is no number and are left out.%n", input, sum.refused());
    }
    try {
      CohortReport.Made made = new CohortReport.Made(software(), facts.version(), facts.policy());
      NumberJson.write(out, made, sum.summary(), sum.refused());
    } catch (IOException e) {
      return notWritten(out, e);
    }
    return sum.refused() == 0 ? DONE : INVALID;
  }

  private int notWritten(Path out, Exception e) {
    err.println(
        out
            + " could not be written ("
            + e.getClass().getSimpleName()
            + "). Nothing half-written was left there.");
    return NOT_WRITTEN;
  }

  /** Says what is not valid; whether nothing may be computed. */
  private boolean isRefused(SparkCohort cohort, String input, List<InputFile> files) {
    progress.begin("Read", 0);
    ColumnProfile profile = cohort.profile();
    progress.begin("Interpreted", profile.people());
    List<ColumnsMixedUp> mixedUp = ColumnsMixedUp.check(profile, facts);
    cohort.problems().forEach(err::println);
    List<Integer> open = cohort.open();
    if (!open.isEmpty()) {
      open.forEach(
          file ->
              err.println(
                  files.get(file).name()
                      + ": a cell is not closed where the file was divided; take line breaks out of"
                      + " its cells, or give it as Parquet."));
      err.println("Nothing was computed.");
      return true;
    }
    mixedUp.forEach(found -> err.println(input + ": " + found.text()));
    if (mixedUp.isEmpty() || groups.columnsConfirmedBy().isPresent()) {
      return false;
    }
    err.println(
        "Nothing was computed. Correct the headings, the units or the mapping; if the columns are"
            + " right as they are, say so with --columns-confirmed-by NAME.");
    return true;
  }

  private int interpret(SparkCohort cohort, String input, Path out) {
    try (CohortFolder folder = CohortFolder.beside(out)) {
      Map<String, Twice> twice = cohort.twice();
      SparkCohort.said(twice).ifPresent(said -> err.println(input + ": " + said));
      JavaRDD<Answered> answers = cohort.answers(twice);
      Answered sum = cohort.sum(answers);
      progress.finish(sum.summary().people());
      if (sum.summary().people() == 0) {
        err.println(input + ": it holds no valid work-up. Nothing was written.");
        return INVALID;
      }
      sum.people().absent().ifPresent(absent -> err.println(input + ": " + absent + "."));
      write(answers, folder);
      folder.finish(report(sum), facts, SourceDate.of(PdfDocument.of(software(), facts)));
      return sum.refused() == 0 ? DONE : INVALID;
    } catch (IOException | UncheckedIOException e) {
      return notWritten(out, e);
    }
  }

  private static void write(JavaRDD<Answered> answers, CohortFolder folder) throws IOException {
    Iterator<Answered> inOrder = SparkCohort.inOrder(answers);
    while (inOrder.hasNext()) {
      for (String row : inOrder.next().rows()) {
        folder.accept(row);
      }
    }
  }

  private CohortReport report(Answered sum) {
    return new CohortReport(
        new CohortReport.Made(software(), facts.version(), facts.policy()),
        groups,
        sum.isInvented(),
        sum.summary(),
        Math.toIntExact(sum.refused()),
        CohortReport.Site.of(new SiteStudy(facts, sum.people(), seed)),
        false,
        List.of());
  }

  private static String software() {
    return "Cistern "
        + Optional.ofNullable(SparkRun.class.getPackage().getImplementationVersion())
            .orElse("development");
  }
}
