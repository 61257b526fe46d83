package cistern.clinic.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What the trail says of each account: what its last entry says is what it must be. */
final class AccountStates {

  private static final Set<String> TELLING =
      Arrays.stream(Action.values())
          .filter(Action::isOfAccount)
          .map(Action::word)
          .collect(Collectors.toUnmodifiableSet());

  private final Map<String, AuditEntry> last = new TreeMap<>();
  private boolean isComplete;

  /** Whether an entry tells of an account; then it is remembered. */
  boolean isTold(AuditEntry entry) {
    isComplete |= entry.action().equals(Action.ACCOUNTS_CHAINED.word());
    boolean isTold = TELLING.contains(entry.action()) && !entry.digest().isEmpty();
    if (isTold) {
      last.put(entry.subject(), entry);
    }
    return isTold;
  }

  /**
   * What is not as it was written. Before the trail held accounts nothing is known of those that
   * have no entry.
   *
   * @param accounts the digest of every account as it is kept, by its identifier
   */
  List<String> faults(Map<String, String> accounts) {
    List<String> faults = new ArrayList<>();
    last.forEach(
        (id, entry) -> {
          if (!accounts.containsKey(id)) {
            faults.add("account " + id + " stands in entry " + entry.number() + " and is gone");
          } else if (!entry.digest().equals(accounts.get(id))) {
            faults.add("account " + id + " is not as entry " + entry.number() + " says");
          }
        });
    if (isComplete) {
      Set<String> untold = new TreeSet<>(accounts.keySet());
      untold.removeAll(last.keySet());
      untold.forEach(id -> faults.add("account " + id + " is kept, but no entry tells of it"));
    }
    return faults;
  }
}
