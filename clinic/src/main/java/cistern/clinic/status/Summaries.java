package cistern.clinic.status;

import cistern.clinic.audit.Digest;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Store;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What lists show of every case, kept in the store: made when a case is changed or signed, when a
 * time in it has come, and all of them when the program or the facts are others.
 */
public final class Summaries implements AutoCloseable {

  /** The name of the thread that reads. */
  static final String READER = "case-reader";

  private static final Logger LOG = LoggerFactory.getLogger(Summaries.class);
  private static final String ROWS = "select case_id, name, changed_at, summary from case_summary ";
  private static final String NEWEST_FIRST = " order by changed_at desc, case_id limit ? offset ?";

  /** Changes with what a summary holds, so that those of an earlier program are made again. */
  private static final String SHAPE = "2";

  /** How many are made before they are written, in one change. */
  private static final int BATCH = 100;

  private final Store store;
  private final Medicine medicine;
  private final ScheduledExecutorService reader =
      Executors.newSingleThreadScheduledExecutor(
          Thread.ofPlatform().daemon().name(READER).factory());

  private Summaries(Store store, Medicine medicine) {
    this.store = store;
    this.medicine = medicine;
  }

  /** The summaries of a store, which are made behind whoever asks. */
  public static Summaries of(Store store, Medicine medicine) {
    Summaries summaries = new Summaries(store, medicine);
    summaries.reader.execute(() -> summaries.quietly(summaries::makeOfOthers));
    long minute = Duration.ofMinutes(1).toMillis();
    Future<?> _ =
        summaries.reader.scheduleWithFixedDelay(
            () -> summaries.quietly(summaries::makeDue), minute, minute, TimeUnit.MILLISECONDS);
    return summaries;
  }

  /** A trouble of the store is told to whoever asks next; here it only is no end of the reading. */
  private void quietly(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException e) {
      LOG.warn("Summaries wait: {}", e.getClass().getName());
    }
  }

  /**
   * Has what was changed read, and waits for it a while.
   *
   * @return how many cases were never read and are not now
   */
  public long bring(Duration patience) {
    if (count("made_by = ?", "") + count("renew_at <= ?", now()) > 0) {
      await(reader.submit(this::makeDue), patience);
    }
    return count("made_by = ? and summary = ''", "");
  }

  private static void await(Future<?> end, Duration patience) {
    try {
      end.get(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      return;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException failure
          ? failure
          : new IllegalStateException(e.getCause());
    }
  }

  private long count(String which, String parameter) {
    return store.look(
        sql ->
            sql.sql("select count(*) from case_summary where " + which)
                .param(parameter)
                .query(Long.class)
                .single());
  }

  /** What tells the summaries of this program under the rules in force now from others. */
  private String madeBy() {
    return Digest.of(SHAPE, medicine.madeBy(), medicine.zone().getId());
  }

  private String now() {
    return medicine.clock().instant().toString();
  }

  private void makeDue() {
    String now = now();
    make("s.made_by = ?", () -> "");
    make("s.renew_at <= ?", () -> now);
  }

  /** Those that another program, other facts or another policy made. */
  private void makeOfOthers() {
    now();
    make("s.made_by <> ?", this::madeBy);
  }

  /** A version and the last that was signed of its case. */
  private record Due(CaseVersion version, long signed) {}

  private void make(String which, Supplier<String> parameter) {
    List<Due> due = due(which, parameter.get());
    while (!due.isEmpty() && !Thread.currentThread().isInterrupted()) {
      // Taken before the cases are read: under rules that change meanwhile they are read again.
      String madeBy = madeBy();
      List<SummaryRow> rows = new ArrayList<>();
      due.forEach(d -> rows.add(SummaryRow.of(d.version(), d.signed(), medicine)));
      store.change(
          sql -> {
            rows.forEach(row -> row.keep(sql, madeBy));
            return rows.size();
          });
      due = due(which, parameter.get());
    }
  }

  private List<Due> due(String which, String parameter) {
    return store.look(
        sql ->
            sql.sql(
                    "select v.case_id, v.number, v.at, v.account, v.step, v.workup, s.signed"
                        + " from case_summary s join case_version v"
                        + " on v.case_id = s.case_id and v.number = s.version where "
                        + which
                        + " order by s.changed_at desc limit ?")
                .params(parameter, BATCH)
                .query((row, index) -> due(row))
                .list());
  }

  private static Due due(ResultSet row) throws SQLException {
    return new Due(
        new CaseVersion(
            row.getString("case_id"),
            row.getLong("number"),
            row.getString("at"),
            row.getString("account"),
            row.getString("step"),
            row.getString("workup")),
        row.getLong("signed"));
  }

  /** Some of all cases, the last changed first: so many, after the first so many. */
  public List<Summary> page(long after, int most) {
    return store.look(sql -> rows(sql.sql(ROWS + NEWEST_FIRST).params(most, after)));
  }

  /** Some of those whose name, person or question holds a text, in capital or small letters. */
  public List<Summary> holding(String text, long after, int most) {
    String plain = text.toLowerCase(Locale.ROOT).replaceAll("([!%_])", "!$1");
    return store.look(
        sql ->
            rows(
                sql.sql(ROWS + "where search like ? escape '!'" + NEWEST_FIRST)
                    .params("%" + plain + "%", most, after)));
  }

  /** The cases of one person. */
  public List<String> ofPerson(String person) {
    return store.look(
        sql ->
            sql.sql("select case_id from case_summary where person = ? order by changed_at desc")
                .param(person)
                .query(String.class)
                .list());
  }

  /** Whether a case bears a name. */
  boolean isNamed(String name) {
    return count("name = ?", name) > 0;
  }

  /** How many cases wait for each duty. */
  public Map<Duty, Long> waiting() {
    Map<Duty, Long> counts = new EnumMap<>(Duty.class);
    store.look(
        sql ->
            sql.sql("select place, count(*) as cases from case_duty where until > ? group by place")
                .param(now())
                .query(
                    (row, index) ->
                        counts.put(DUTIES.get(row.getInt("place")), row.getLong("cases")))
                .list());
    return counts;
  }

  /** Some of the cases that wait for a duty, by the time at which it is due. */
  public List<Summary> waiting(Duty duty, int most) {
    return store.look(
        sql ->
            rows(
                sql.sql(
                        "select s.case_id, s.name, s.changed_at, s.summary from case_duty d"
                            + " join case_summary s on s.case_id = d.case_id"
                            + " where d.place = ? and d.until > ?"
                            + " order by d.due_at, d.case_id limit ?")
                    .params(place(duty), now(), most)));
  }

  /**
   * Which of what waits is looked at.
   *
   * @param only one duty; nothing for all
   * @param worker only cases that this account has worked on; empty for all
   */
  public record Which(Optional<Duty> only, String worker) {}

  /** What comes first, first. */
  private static final List<Duty> DUTIES = List.of(Duty.values());

  /** Where a duty stands among all, from 0. */
  static int place(Duty duty) {
    return DUTIES.indexOf(duty);
  }

  /** A part of the timetable: a row a case, by what comes first and when that is due. */
  public List<Summary> day(Which which, long after, int most) {
    List<Object> given = new ArrayList<>(List.of(now()));
    StringBuilder question =
        new StringBuilder(
            "select s.case_id, s.name, s.changed_at, s.summary from case_duty d"
                + " join case_summary s on s.case_id = d.case_id where d.until > ?");
    if (which.only().isPresent()) {
      question.append(" and d.place = ?");
      given.add(place(which.only().get()));
    } else {
      question.append(
          " and not exists (select 1 from case_duty e where e.case_id = d.case_id"
              + " and e.place < d.place and e.until > ?)");
      given.add(now());
    }
    if (!which.worker().isEmpty()) {
      question.append(
          " and exists (select 1 from case_version v where v.case_id = d.case_id"
              + " and v.account = ?)");
      given.add(which.worker());
    }
    given.addAll(List.of(most, after));
    String whole =
        question.append(" order by d.place, d.due_at, d.case_id limit ? offset ?").toString();
    return store.look(sql -> rows(sql.sql(whole).params(given)));
  }

  private static List<Summary> rows(JdbcClient.StatementSpec question) {
    return question
        .query(
            (row, index) ->
                Summary.parse(
                    row.getString("case_id"),
                    row.getString("name"),
                    row.getString("changed_at"),
                    row.getString("summary")))
        .list();
  }

  /** Ends the reading; what was not read is read the next time. */
  @Override
  public void close() {
    reader.shutdownNow();
    try {
      reader.awaitTermination(Setting.STORE_WAIT.number(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
