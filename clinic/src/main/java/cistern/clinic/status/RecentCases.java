package cistern.clinic.status;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import java.time.temporal.ChronoUnit;
import org.springframework.util.ConcurrentLruCache;

/**
 * The cases that were opened last, as they were read and interpreted then. A version never changes,
 * and what depends on the time is as of this minute.
 */
public final class RecentCases {

  private final Medicine medicine;
  private final ConcurrentLruCache<Key, OpenCase> last;

  private RecentCases(Medicine medicine) {
    this.medicine = medicine;
    last =
        new ConcurrentLruCache<>(
            Setting.CASES_OPEN.number(), key -> OpenCase.of(key.version(), medicine));
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
   * @param rules that were in force
   */
  private record Key(CaseVersion version, long minute, RulesInForce rules) {}

  /** A version, read and interpreted. */
  public OpenCase open(CaseVersion version) {
    long minute = medicine.clock().instant().truncatedTo(ChronoUnit.MINUTES).getEpochSecond();
    return last.get(new Key(version, minute, medicine.rules()));
  }
}
