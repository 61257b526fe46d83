package cistern.clinic.cases;

import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** What a person has typed and not saved yet: one draft for each person, case and step. */
public final class Drafts {

  private final Store store;
  private final Clock clock;

  private Drafts(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** The drafts of a store. */
  public static Drafts of(Store store, Clock clock) {
    return new Drafts(store, clock);
  }

  /**
   * Whose draft it is, and of what.
   *
   * @param account who typed
   * @param caseId the case
   * @param step the form
   */
  public record Owner(String account, String caseId, String step) {}

  /**
   * A draft.
   *
   * @param base the version of the case that the form was opened on
   * @param at when it was last kept, ISO 8601 in UTC
   * @param typed the fields as the browser sends them
   */
  public record Draft(long base, String at, String typed) {}

  /** Keeps a draft in place of the one before. */
  public void keep(Owner owner, long base, String typed) {
    String at = clock.instant().truncatedTo(ChronoUnit.SECONDS).toString();
    store.change(
        sql ->
            sql.sql(
                    "insert into draft (account, case_id, step, base, at, typed)"
                        + " values (?, ?, ?, ?, ?, ?) on conflict (account, case_id, step)"
                        + " do update set base = excluded.base, at = excluded.at,"
                        + " typed = excluded.typed")
                .params(owner.account(), owner.caseId(), owner.step(), base, at, typed)
                .update());
  }

  /** A draft, if there is one. */
  public Optional<Draft> find(Owner owner) {
    return store.look(
        sql ->
            sql.sql(
                    "select base, at, typed from draft"
                        + " where account = ? and case_id = ? and step = ?")
                .params(owner.account(), owner.caseId(), owner.step())
                .query(Draft.class)
                .optional());
  }

  /** Drops a draft that was saved or given up. */
  public void drop(Owner owner) {
    store.change(
        sql ->
            sql.sql("delete from draft where account = ? and case_id = ? and step = ?")
                .params(owner.account(), owner.caseId(), owner.step())
                .update());
  }
}
