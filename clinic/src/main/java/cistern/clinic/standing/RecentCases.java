package cistern.clinic.standing;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The cases that were opened last, as they were read and interpreted then. A version never changes,
 * and what depends on the time is as of this minute.
 */
public final class RecentCases {

  private final Medicine medicine;
  private final Map<Key, OpenCase> last =
      Collections.synchronizedMap(new Newest(Setting.CASES_OPEN.number()));

  private RecentCases(Medicine medicine) {
    this.medicine = medicine;
  }

  /** No case yet. */
  public static RecentCases of(Medicine medicine) {
    return new RecentCases(medicine);
  }

  /**
   * What makes two openings the same.
   *
   * @param version of a case, with its content
   * @param minute of the time that the medicine was asked at
   */
  private record Key(CaseVersion version, long minute) {}

  /** A map that lets the one go that was not asked for longest. */
  private static final class Newest extends LinkedHashMap<Key, OpenCase> {
    private static final long serialVersionUID = 1L;
    private static final float LOAD = 0.75f;

    private final int most;

    Newest(int most) {
      super(most, LOAD, true);
      this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<Key, OpenCase> eldest) {
      return size() > most;
    }
  }

  /** A version, read and interpreted. */
  public OpenCase open(CaseVersion version) {
    Key key =
        new Key(
            version, medicine.clock().instant().truncatedTo(ChronoUnit.MINUTES).getEpochSecond());
    return Optional.ofNullable(last.get(key)).orElseGet(() -> opened(key));
  }

  private OpenCase opened(Key key) {
    OpenCase open = OpenCase.of(key.version(), medicine);
    last.put(key, open);
    return open;
  }
}
