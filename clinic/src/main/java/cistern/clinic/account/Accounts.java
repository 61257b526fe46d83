package cistern.clinic.account;

import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Everybody who may come in. */
public final class Accounts {

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9.-]{1,39}");
  private static final String COLUMNS =
      "select id, name, full_name, role, is_active <> 0 as is_active from account ";

  private final Store store;
  private final AuditTrail trail;
  private final Clock clock;
  private final Chance chance;

  private Accounts(Store store, AuditTrail trail, Clock clock, Chance chance) {
    this.store = store;
    this.trail = trail;
    this.clock = clock;
    this.chance = chance;
  }

  /** The accounts of a store. */
  public static Accounts of(Store store, AuditTrail trail, Clock clock, Chance chance) {
    return new Accounts(store, trail, clock, chance);
  }

  /**
   * Who is to come in.
   *
   * @param name for signing in
   * @param fullName as it stands under a report
   * @param role what the person may do
   */
  public record Newcomer(String name, String fullName, Role role) {

    /** Why the account cannot be made as it was asked for. */
    Optional<Refused> check() {
      if (!NAME.matcher(name).matches()) {
        return Optional.of(Refused.NAME);
      }
      return fullName.isBlank() ? Optional.of(Refused.FULL_NAME) : Optional.empty();
    }
  }

  /** The account of an identifier, while it is open. */
  public Optional<Account> find(String id) {
    return store.look(
        sql ->
            sql.sql(COLUMNS + "where id = ? and is_active <> 0")
                .param(id)
                .query(Account.class)
                .optional());
  }

  /** The name of a person as it stands under a report; the identifier when there is none. */
  public String fullName(String id) {
    return store
        .look(
            sql ->
                sql.sql("select full_name from account where id = ?")
                    .param(id)
                    .query(String.class)
                    .optional())
        .orElse(id);
  }

  /** Everybody, by name. */
  public List<Account> all() {
    return store.look(sql -> sql.sql(COLUMNS + "order by name").query(Account.class).list());
  }

  /** Whether nobody may come in yet. */
  public boolean isEmpty() {
    return store.look(
        sql -> sql.sql("select count(*) from account").query(Long.class).single() == 0);
  }

  /** Lets a person in by name and password, and counts what was wrong. */
  public Outcome<Account> signIn(String name, String password) {
    String key = name.strip().toLowerCase(Locale.ROOT);
    Optional<Stored> stored = store.look(sql -> stored(sql, key));
    boolean isRight = Passwords.isRight(password, stored.flatMap(Stored::password));
    if (stored.isEmpty() || stored.get().isActive() == 0) {
      note("", Action.SIGN_IN_REFUSED, "");
      return Outcome.of(Refused.WRONG);
    }
    Stored known = stored.get();
    if (known.lockedUntil() > clock.millis()) {
      note(known.id(), Action.SIGN_IN_REFUSED, known.id());
      return Outcome.of(Refused.LOCKED);
    }
    return isRight ? entered(known.id(), Action.SIGNED_IN) : wrong(known.id());
  }

  /** How an account is stored. */
  private record Stored(String id, Optional<String> password, long lockedUntil, long isActive) {}

  private static Optional<Stored> stored(JdbcClient sql, String name) {
    return sql.sql("select id, password, locked_until, is_active from account where name = ?")
        .param(name)
        .query(
            (row, index) ->
                new Stored(
                    row.getString("id"),
                    Optional.ofNullable(row.getString("password")),
                    row.getLong("locked_until"),
                    row.getLong("is_active")))
        .optional();
  }

  private Outcome<Account> entered(String id, Action action) {
    return store.change(
        sql -> {
          sql.sql("update account set failures = 0, locked_until = 0 where id = ?")
              .param(id)
              .update();
          trail.append(sql, Note.of(id, action, id));
          return Outcome.of(
              sql.sql(COLUMNS + "where id = ?").param(id).query(Account.class).single());
        });
  }

  private Outcome<Account> wrong(String id) {
    return store.change(
        sql -> {
          long failures =
              sql.sql("update account set failures = failures + 1 where id = ? returning failures")
                  .param(id)
                  .query(Long.class)
                  .single();
          trail.append(sql, Note.of(id, Action.SIGN_IN_REFUSED, id));
          if (failures < Setting.LOCK_OUT_FAILURES.number()) {
            return Outcome.of(Refused.WRONG);
          }
          long until =
              clock.millis() + Duration.ofMinutes(Setting.LOCK_OUT_MINUTES.number()).toMillis();
          sql.sql("update account set failures = 0, locked_until = ? where id = ?")
              .params(until, id)
              .update();
          trail.append(sql, Note.of(id, Action.ACCOUNT_LOCKED, id));
          return Outcome.of(Refused.LOCKED);
        });
  }

  /** Notes that a person left. */
  public void signOut(Account account) {
    note(account.id(), Action.SIGNED_OUT, account.id());
  }

  /** Makes an account without a password; a one-time code lets its person in to set one. */
  public Outcome<Account> add(Newcomer newcomer, String by) {
    Optional<Refused> refused = newcomer.check();
    if (refused.isPresent()) {
      return Outcome.of(refused.get());
    }
    return store.change(
        sql -> {
          String id = chance.identifier();
          int added =
              sql.sql(
                      "insert into account (id, name, full_name, role, failures, locked_until,"
                          + " is_active, created_at) values (?, ?, ?, ?, 0, 0, 1, ?)"
                          + " on conflict do nothing")
                  .params(
                      id,
                      newcomer.name(),
                      newcomer.fullName().strip(),
                      newcomer.role().name(),
                      clock.instant().toString())
                  .update();
          if (added == 0) {
            return Outcome.of(Refused.NAME_TAKEN);
          }
          trail.append(sql, Note.of(by, Action.ACCOUNT_MADE, id));
          return Outcome.of(
              new Account(id, newcomer.name(), newcomer.fullName().strip(), newcomer.role(), true));
        });
  }

  /** Closes an account; what its person did stays under the person's name. */
  public Outcome<String> close(String id, String by) {
    if (id.equals(by)) {
      return Outcome.of(Refused.ITSELF);
    }
    return store.change(
        sql -> {
          sql.sql("update account set is_active = 0 where id = ?").param(id).update();
          trail.append(sql, Note.of(by, Action.ACCOUNT_CLOSED, id));
          return Outcome.of(id);
        });
  }

  /** Sets the password of an account. */
  public Outcome<Account> withPassword(Account account, String password) {
    Optional<Refused> refused = Passwords.check(password);
    if (refused.isPresent()) {
      return Outcome.of(refused.get());
    }
    String hash = Passwords.hash(password);
    return store.change(
        sql -> {
          sql.sql("update account set password = ? where id = ?")
              .params(hash, account.id())
              .update();
          trail.append(sql, Note.of(account.id(), Action.PASSWORD_SET, account.id()));
          return Outcome.of(account);
        });
  }

  private void note(String account, Action action, String subject) {
    store.change(sql -> trail.append(sql, Note.of(account, action, subject)));
  }
}
