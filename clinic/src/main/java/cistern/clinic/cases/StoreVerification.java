package cistern.clinic.cases;

import cistern.clinic.account.Accounts;
import cistern.clinic.audit.TrailCheck;
import cistern.clinic.gel.Gels;
import cistern.clinic.house.RuleBook;
import cistern.clinic.store.Store;
import java.util.Map;
import java.util.TreeMap;

/** Everything that is kept for good, against the audit trail. */
public final class StoreVerification {

  private StoreVerification() {}

  /**
   * Whether the trail is whole, every version, report, gel, rule and account is as it was written,
   * and the engine finds its file undamaged.
   */
  public static TrailCheck check(Store store) {
    TrailCheck check =
        store.snapshot(
            sql -> {
              Map<String, String> digests = new TreeMap<>(Cases.digests(sql));
              digests.putAll(Reports.digests(sql));
              digests.putAll(Gels.digests(sql));
              digests.putAll(RuleBook.digests(sql));
              return TrailCheck.check(sql, digests, Accounts.digests(sql));
            });
    return check.withFaults(store.damage());
  }
}
