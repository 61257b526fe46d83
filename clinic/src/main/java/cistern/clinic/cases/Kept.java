package cistern.clinic.cases;

import cistern.clinic.audit.TrailCheck;
import cistern.clinic.gel.Gels;
import cistern.clinic.store.Store;
import java.util.Map;
import java.util.TreeMap;

/** Everything that is kept for good, against the audit trail. */
public final class Kept {

  private Kept() {}

  /** Whether the trail is whole and every version and report is as it was written; changes wait. */
  public static TrailCheck check(Store store) {
    return store.change(
        sql -> {
          sql.sql("update audit_head set number = number where one = 1").update();
          Map<String, String> digests = new TreeMap<>(Cases.digests(sql));
          digests.putAll(Reports.digests(sql));
          digests.putAll(Gels.digests(sql));
          return TrailCheck.check(sql, digests);
        });
  }
}
