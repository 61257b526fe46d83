package cistern.clinic.casework.gel;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.setting.Setting;
import cistern.exchange.workup.WorkupReading;
import java.util.List;
import java.util.Optional;
import org.springframework.util.ConcurrentLruCache;

/**
 * Who placed the lanes of a case where they stand: whose version brought them. A version that says
 * what an earlier one said, because a change was taken back, brings nothing of its own.
 */
final class PlacedBy {

  private final CaseContext context;

  /** Accounts of the cases that were opened last: what came before a version never changes. */
  private final ConcurrentLruCache<CaseVersion, String> accounts =
      new ConcurrentLruCache<>(Setting.CASES_OPEN.number(), this::found);

  PlacedBy(CaseContext context) {
    this.context = context;
  }

  /** The account of the person. */
  String account(CaseVersion version) {
    return accounts.get(version);
  }

  private String found(CaseVersion version) {
    List<CaseVersion> all = context.cases().versions(version.caseId());
    CaseVersion since = version;
    Optional<CaseVersion> earlier = earlier(all, since);
    while (earlier.isPresent()) {
      since = earlier.get();
      earlier = earlier(all, since);
    }
    return since.account();
  }

  /** The version that one takes back to, or else the one before it that places the lanes alike. */
  private Optional<CaseVersion> earlier(List<CaseVersion> all, CaseVersion version) {
    List<CaseVersion> before = all.subList(0, Math.toIntExact(version.number()) - 1);
    Optional<CaseVersion> same =
        before.stream().filter(v -> v.workup().equals(version.workup())).findFirst();
    return same.isPresent() || before.isEmpty()
        ? same
        : Optional.of(before.getLast()).filter(v -> isPlacedAlike(v, version));
  }

  private boolean isPlacedAlike(CaseVersion one, CaseVersion other) {
    return context.medicine().read(one.workup()) instanceof WorkupReading.Understood a
        && context.medicine().read(other.workup()) instanceof WorkupReading.Understood b
        && BandsMember.isPlacedAlike(BandsMember.of(a.document()), BandsMember.of(b.document()));
  }
}
