package cistern.clinic.cases;

import cistern.clinic.account.Account;
import cistern.clinic.account.AccountOutcome;
import cistern.clinic.account.Accounts;
import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.account.Chance;
import cistern.clinic.account.OneTimeCodes;
import cistern.clinic.account.Role;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Random;

/**
 * Everything that stands on a store, with a clock that stands still and chance from a seed.
 *
 * @param store open
 * @param trail of the store
 * @param accounts of the store
 * @param codes of the store
 * @param cases of the store
 * @param reports of the store
 * @param drafts of the store
 */
public record Clinic(
    Store store,
    AuditTrail trail,
    Accounts accounts,
    OneTimeCodes codes,
    Cases cases,
    Reports reports,
    Drafts drafts)
    implements AutoCloseable {

  /** When everything in a test happens. */
  public static final Instant THEN = Instant.parse("2034-05-09T08:00:00Z");

  /** Opens a store. */
  public static Clinic open(Location location) {
    return open(location, Clock.fixed(THEN, ZoneOffset.UTC), 7);
  }

  /** Opens a store under a clock and a seed. */
  public static Clinic open(Location location, Clock clock, long seed) {
    Store store = Store.open(location);
    AuditTrail trail = AuditTrail.of(clock);
    Chance chance = Chance.of(new Random(seed));
    return new Clinic(
        store,
        trail,
        Accounts.of(store, trail, clock, chance),
        OneTimeCodes.of(store, trail, clock, chance),
        Cases.of(store, trail, clock, chance),
        Reports.of(store, trail, clock),
        Drafts.of(store, clock));
  }

  /** An invented person of a role. */
  public Account person(Role role) {
    return done(
        accounts.add(
            new Newcomer(role.word(), "Invented " + role.word(), role), "the test itself"));
  }

  /** What came of something that was done. */
  public static <T> T done(AccountOutcome<T> outcome) {
    return switch (outcome) {
      case AccountOutcome.Done<T> done -> done.value();
      case AccountOutcome.NotDone<T> not -> throw new AssertionError(not.reason());
    };
  }

  @Override
  public void close() {
    store.close();
  }
}
