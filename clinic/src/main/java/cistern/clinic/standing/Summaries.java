package cistern.clinic.standing;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.setting.Setting;
import java.time.Duration;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What lists show of every case, held for some minutes: a list of many would otherwise interpret
 * them all again each time.
 */
public final class Summaries {

  private final Medicine medicine;
  private final Map<String, Held> byCase = new ConcurrentHashMap<>();

  private Summaries(Medicine medicine) {
    this.medicine = medicine;
  }

  /** None yet. */
  public static Summaries of(Medicine medicine) {
    return new Summaries(medicine);
  }

  /** What makes a summary old: another version, another signature, some minutes. */
  private record Of(long number, OptionalLong signed, long minutes) {}

  private record Held(Of of, Summary summary) {}

  /**
   * The summary of a case as it stands.
   *
   * @param signed the version that was signed last, if one was
   */
  public Summary of(CaseVersion version, OptionalLong signed) {
    long fresh = Duration.ofMinutes(Setting.SUMMARY_MINUTES.number()).toMillis();
    Of of = new Of(version.number(), signed, medicine.clock().millis() / fresh);
    Held held = byCase.get(version.caseId());
    if (held == null || !held.of().equals(of)) {
      held = new Held(of, written(version, signed));
      byCase.put(version.caseId(), held);
    }
    return held.summary();
  }

  private Summary written(CaseVersion version, OptionalLong signed) {
    try {
      OpenCase open = OpenCase.of(version, medicine);
      return Summary.of(open, Standing.of(open, medicine, signed));
    } catch (UnreadableCase e) {
      return Summary.unreadable(version);
    }
  }
}
