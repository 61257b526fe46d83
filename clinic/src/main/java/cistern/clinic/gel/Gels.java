package cistern.clinic.gel;

import cistern.bands.BandReport.GelNamed;
import cistern.clinic.account.Chance;
import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.audit.Digest;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Store;
import cistern.fact.Facts;
import cistern.gel.GelReader;
import cistern.gel.image.Picture;
import cistern.gel.image.PictureFile;
import cistern.gel.lanes.LanePlan;
import cistern.gel.overlay.DensityCurve;
import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.ReadingJson;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.locks.ReentrantLock;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.ConcurrentLruCache;

/**
 * Every picture of a gel with its readings. A picture is named after its content, so that a case
 * names exactly what was seen, and the gel of several people is kept once.
 */
public final class Gels {

  private static final String COLUMNS =
      "select id, picture, lanes, at, account, made_by, text from gel_reading ";

  private final Store store;
  private final AuditTrail trail;
  private final Clock clock;
  private final Chance chance;

  /** A picture takes much memory while it is read: one after the other. */
  private final ReentrantLock alone = new ReentrantLock();

  /** The density curves of the pairs that were looked at last. */
  private final ConcurrentLruCache<Lanes, List<DensityCurve>> curves =
      new ConcurrentLruCache<>(Setting.GEL_CURVES.number(), this::measured);

  private Gels(Store store, AuditTrail trail, Clock clock, Chance chance) {
    this.store = store;
    this.trail = trail;
    this.clock = clock;
    this.chance = chance;
  }

  /** The gels of a store. */
  public static Gels of(Store store, AuditTrail trail, Clock clock, Chance chance) {
    return new Gels(store, trail, clock, chance);
  }

  /**
   * Who has a picture read, and with what.
   *
   * @param account who
   * @param madeBy the program and the facts
   * @param facts in force, the reader's own among them
   */
  public record Asker(String account, String madeBy, Facts facts) {}

  /**
   * Keeps a picture and reads it; both are there already when they were kept before.
   *
   * @throws IOException when the bytes are not a picture that can be read, with a sentence
   */
  public KeptReading add(byte[] bytes, LanePlan plan, Asker asker) throws IOException {
    String name = Digest.ofBytes(bytes);
    Optional<KeptReading> before = find(name, plan);
    if (before.isPresent()) {
      return before.get();
    }
    String text = read(bytes, name, plan, asker.facts());
    return store.change(
        sql -> {
          keep(sql, name, bytes, asker.account());
          return find(sql, name, plan.toWords())
              .orElseGet(() -> keep(sql, name, plan, asker, text));
        });
  }

  private String read(byte[] bytes, String name, LanePlan plan, Facts facts) throws IOException {
    alone.lock();
    try {
      Picture picture = new PictureFile(facts).read(new ByteArrayInputStream(bytes));
      GelReading reading = new GelReader(facts).read(picture, name, plan);
      return ReadingJson.toJson(List.of(reading), false);
    } finally {
      alone.unlock();
    }
  }

  private void keep(JdbcClient sql, String name, byte[] bytes, String by) {
    int added =
        sql.sql(
                "insert into gel_picture (name, at, account, bytes) values (?, ?, ?, ?)"
                    + " on conflict do nothing")
            .params(name, now(), by, bytes)
            .update();
    if (added > 0) {
      trail.append(sql, new Note(by, Action.GEL_KEPT, subject(name), name));
    }
  }

  private static String subject(String picture) {
    return "gel/" + picture;
  }

  private KeptReading keep(JdbcClient sql, String name, LanePlan plan, Asker asker, String text) {
    KeptReading reading =
        new KeptReading(
            chance.identifier(),
            name,
            plan.toWords(),
            now(),
            asker.account(),
            asker.madeBy(),
            text);
    sql.sql(
            "insert into gel_reading (id, picture, lanes, at, account, made_by, text)"
                + " values (?, ?, ?, ?, ?, ?, ?)")
        .params(
            reading.id(),
            reading.picture(),
            reading.lanes(),
            reading.at(),
            reading.account(),
            reading.madeBy(),
            reading.text())
        .update();
    trail.append(
        sql, new Note(asker.account(), Action.GEL_READ, reading.subject(), reading.digest()));
    return reading;
  }

  /** The reading of a kept picture under a plan, if it was made. */
  public Optional<KeptReading> find(String picture, LanePlan plan) {
    return store.look(sql -> find(sql, picture, plan.toWords()));
  }

  /** The reading that a work-up names, if it is kept here. */
  public Optional<KeptReading> find(GelNamed named) {
    try {
      return find(
          named.file(), named.lanes().isEmpty() ? LanePlan.NONE : LanePlan.parse(named.lanes()));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static Optional<KeptReading> find(JdbcClient sql, String picture, String lanes) {
    return sql.sql(COLUMNS + "where picture = ? and lanes = ?")
        .params(picture, lanes)
        .query(KeptReading.class)
        .optional();
  }

  /** A reading by its identifier. */
  public Optional<KeptReading> reading(String id) {
    return store.look(
        sql -> sql.sql(COLUMNS + "where id = ?").param(id).query(KeptReading.class).optional());
  }

  /** What a kept reading says. */
  public static GelReading read(KeptReading kept, Facts facts) {
    return WrittenReading.parse(kept.text(), facts);
  }

  /** The bytes of a picture as they were sent. */
  public Optional<byte[]> bytes(String picture) {
    return store.look(
        sql ->
            sql
                .sql("select bytes from gel_picture where name = ?")
                .param(picture)
                .query((row, index) -> row.getBytes("bytes"))
                .list()
                .stream()
                .findFirst());
  }

  /** A kept picture, decoded. */
  public Optional<Picture> picture(String name, Facts facts) {
    return bytes(name).map(bytes -> decoded(bytes, facts));
  }

  /**
   * Some lanes of a reading, side by side.
   *
   * @param kept the reading
   * @param lanes of it, that a window shows
   * @param facts in force
   */
  private record Lanes(KeptReading kept, List<LaneReading> lanes, Facts facts) {}

  /** The stain along each of some lanes, over the rows of their window. */
  public List<DensityCurve> curves(KeptReading kept, List<LaneReading> lanes, Facts facts) {
    return curves.get(new Lanes(kept, lanes, facts));
  }

  private List<DensityCurve> measured(Lanes of) {
    LaneWindow window = LaneWindow.of(read(of.kept(), of.facts()), of.lanes());
    Picture picture = picture(of.kept().picture(), of.facts()).orElseThrow();
    return of.lanes().stream()
        .map(lane -> DensityCurve.of(window, picture, lane, of.facts()))
        .toList();
  }

  private Picture decoded(byte[] bytes, Facts facts) {
    alone.lock();
    try {
      return new PictureFile(facts).read(new ByteArrayInputStream(bytes));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      alone.unlock();
    }
  }

  /** The digest of everything here as it is kept now, by what the audit trail calls it. */
  public static Map<String, String> digests(JdbcClient sql) {
    Map<String, String> digests = new TreeMap<>();
    sql.sql("select name from gel_picture order by name")
        .query(String.class)
        .list()
        .forEach(name -> digests.put(subject(name), digest(sql, name)));
    sql.sql(COLUMNS)
        .query(KeptReading.class)
        .list()
        .forEach(r -> digests.put(r.subject(), r.digest()));
    return digests;
  }

  private static String digest(JdbcClient sql, String name) {
    return sql.sql("select bytes from gel_picture where name = ?")
        .param(name)
        .query((row, index) -> Digest.ofBytes(row.getBytes("bytes")))
        .single();
  }

  private String now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
