package cistern.clinic.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Whether the trail is whole, and whether every version and report is still what was written.
 *
 * @param entries how many entries were looked at
 * @param head the hash of the last; noted elsewhere, it shows a trail that was cut off or rewritten
 * @param faults everything that is not as it was written, by number of entry or case
 */
public record TrailCheck(long entries, String head, List<String> faults) {

  private static final int STRIDE = 1000;

  /** Copies the faults. */
  public TrailCheck {
    faults = List.copyOf(faults);
  }

  /** Whether nothing is wrong. */
  public boolean isWhole() {
    return faults.isEmpty();
  }

  /** The same with more that is wrong. */
  public TrailCheck withFaults(List<String> more) {
    List<String> all = new ArrayList<>(faults);
    all.addAll(more);
    return new TrailCheck(entries, head, all);
  }

  /**
   * Checks a store.
   *
   * @param kept the digest of everything that is kept, by the subject of the entry that tells of it
   * @param accounts the digest of every account, by its identifier
   */
  public static TrailCheck check(
      JdbcClient sql, Map<String, String> kept, Map<String, String> accounts) {
    List<String> faults = new ArrayList<>();
    Map<String, String> unseen = new java.util.TreeMap<>(kept);
    AccountStates states = new AccountStates();
    String before = "";
    long expected = 1;
    List<AuditEntry> entries = AuditTrail.from(sql, 0, STRIDE);
    while (!entries.isEmpty()) {
      for (AuditEntry entry : entries) {
        check(entry, before, expected, faults);
        if (!states.isTold(entry) && !entry.digest().isEmpty()) {
          checkKept(entry, kept, unseen, faults);
        }
        before = entry.hash();
        expected = entry.number() + 1;
      }
      entries = AuditTrail.from(sql, expected, STRIDE);
    }
    checkHead(sql, expected - 1, before, faults);
    faults.addAll(states.faults(accounts));
    unseen.keySet().forEach(s -> faults.add(s + " is kept, but no entry tells of it"));
    return new TrailCheck(expected - 1, before, faults);
  }

  private static void check(AuditEntry entry, String before, long expected, List<String> faults) {
    if (entry.number() != expected) {
      faults.add("entries " + expected + " to " + (entry.number() - 1) + " are missing");
    } else if (!entry.hash().equals(entry.hashAfter(before))) {
      faults.add("entry " + entry.number() + " is not as it was written");
    }
  }

  private static void checkKept(
      AuditEntry entry, Map<String, String> kept, Map<String, String> unseen, List<String> faults) {
    unseen.remove(entry.subject());
    if (!kept.containsKey(entry.subject())) {
      faults.add(entry.subject() + " was written in entry " + entry.number() + " and is gone");
    } else if (!entry.digest().equals(kept.get(entry.subject()))) {
      faults.add(entry.subject() + " is not as entry " + entry.number() + " says");
    }
  }

  private static void checkHead(JdbcClient sql, long last, String hash, List<String> faults) {
    long number = sql.sql("select number from audit_head where one = 1").query(Long.class).single();
    String head = sql.sql("select hash from audit_head where one = 1").query(String.class).single();
    if (number != last || !head.equals(hash)) {
      faults.add("the trail ends at entry " + last + ", its head says " + number);
    }
  }
}
