package cistern.cohortjob;

import cistern.cohort.ColumnProfile;
import cistern.cohortjob.CohortTask.Answered;
import cistern.cohortjob.CohortTask.Looked;
import cistern.cohortjob.CohortTask.Refused;
import cistern.cohortjob.CohortTask.Twice;
import cistern.exchange.intake.CohortPart;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputTrouble;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.storage.StorageLevel;
import org.apache.spark.util.LongAccumulator;
import scala.Tuple2;

/**
 * A cohort on the engine: looked at first, then interpreted, and merged. Nothing depends on how the
 * input is divided, on the order in which divisions are done, or on how often one is.
 */
final class SparkCohort implements AutoCloseable {

  /** Problems that are said; a mixed-up table of a million rows has as many. */
  private static final int MOST_SAID = 1_000;

  private static final int LEVELS = 2;

  private final Broadcast<CohortTask> task;
  private final JavaRDD<Block> blocks;
  private final JavaRDD<Looked> looked;
  private final JavaSparkContext engine;
  private final LongAccumulator rows;

  SparkCohort(
      JavaSparkContext engine, JavaRDD<Block> blocks, CohortTask task, LongAccumulator rows) {
    Broadcast<CohortTask> sent = engine.broadcast(task);
    this.engine = engine;
    this.task = sent;
    this.blocks = blocks;
    this.rows = rows;
    this.looked =
        blocks
            .map(
                block -> {
                  Looked one = sent.value().look(block);
                  rows.add(one.ids().size());
                  return one;
                })
            .persist(StorageLevel.DISK_ONLY());
  }

  /** How the columns lie. */
  ColumnProfile profile() {
    return looked
        .map(Looked::profile)
        .treeAggregate(ColumnProfile.NONE, ColumnProfile::merge, ColumnProfile::merge, LEVELS);
  }

  /** The files of which a division ends within a cell. */
  List<Integer> open() {
    return looked.filter(Looked::isOpen).map(one -> one.at().file()).distinct().collect();
  }

  /** What is not valid, each with its place in the whole file: the first thousand of them. */
  List<String> problems() {
    if (looked.filter(one -> !one.refused().isEmpty()).isEmpty()) {
      return List.of();
    }
    Map<LinePlace, Long> before = linesBefore();
    return looked.filter(one -> !one.refused().isEmpty()).take(MOST_SAID).stream()
        .flatMap(one -> one.refused().stream().map(r -> said(r, lines(before, one.at()))))
        .limit(MOST_SAID)
        .toList();
  }

  private static long lines(Map<LinePlace, Long> before, LinePlace at) {
    return before.getOrDefault(new LinePlace(at.file(), at.division(), 0), 0L);
  }

  private static String said(Refused refused, long linesBefore) {
    return refused.isTable()
        ? refused.name() + ": " + CohortPart.placed(refused.problem(), linesBefore).toText()
        : refused.name()
            + ":"
            + (linesBefore + refused.line() + 1)
            + ": "
            + refused.problem().toText();
  }

  /** How many lines of its file stand before each division. */
  private Map<LinePlace, Long> linesBefore() {
    TreeMap<LinePlace, Long> lines =
        new TreeMap<>(
            looked
                .mapToPair(
                    one ->
                        new Tuple2<>(
                            new LinePlace(one.at().file(), one.at().division(), 0), one.end()))
                .reduceByKey(Math::max)
                .collectAsMap());
    Map<LinePlace, Long> before = new HashMap<>();
    int file = -1;
    long sum = 0;
    for (Map.Entry<LinePlace, Long> division : lines.entrySet()) {
      sum = division.getKey().file() == file ? sum : 0;
      file = division.getKey().file();
      before.put(division.getKey(), sum);
      sum += division.getValue();
    }
    return before;
  }

  /** The first work-up of each id that stands more than once. */
  Map<String, Twice> twice() {
    return new HashMap<>(
        looked
            .flatMapToPair(one -> ids(one).iterator())
            .reduceByKey(Twice::merge)
            .filter(id -> id._2().count() > 1)
            .collectAsMap());
  }

  private static List<Tuple2<String, Twice>> ids(Looked one) {
    return IntStream.range(0, one.ids().size())
        .filter(i -> !one.ids().get(i).isEmpty())
        .mapToObj(i -> new Tuple2<>(one.ids().get(i), new Twice(one.at(), i, 1)))
        .toList();
  }

  /** The sentence about work-ups that are left out for their ids; nothing when there are none. */
  static Optional<String> said(Map<String, Twice> twice) {
    long left = twice.values().stream().mapToLong(of -> of.count() - 1).sum();
    return left == 0
        ? Optional.empty()
        : Optional.of(
            "%,d work-ups left out: %s"
                .formatted(left, InputProblem.of(InputTrouble.ID_TWICE, "id").toText()));
  }

  /** Everything interpreted; kept on disk, so that the rows can be read after the sums. */
  JavaRDD<Answered> answers(Map<String, Twice> twice) {
    Broadcast<CohortTask> sent = task;
    Broadcast<Map<String, Twice>> kept = engine.broadcast(twice);
    LongAccumulator done = rows;
    return blocks
        .map(
            block -> {
              Answered one = sent.value().interpret(block, kept.value());
              done.add(one.rows().size());
              return one;
            })
        .persist(StorageLevel.DISK_ONLY());
  }

  /** The sums of all. */
  Answered sum(JavaRDD<Answered> answers) {
    return answers
        .map(Answered::withoutRows)
        .treeAggregate(task.value().nobody(), Answered::merge, Answered::merge, LEVELS);
  }

  /** The rows of all, in the order of the input. */
  static Iterator<Answered> inOrder(JavaRDD<Answered> answers) {
    return answers.toLocalIterator();
  }

  @Override
  public void close() {
    looked.unpersist();
  }
}
