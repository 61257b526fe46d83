package cistern.clinic.account;

import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditEntry;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.audit.Digest;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Everybody who may come in. */
public final class Accounts {

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9.-]{1,39}");

  /** Two people of one name are told apart by what they sign in with, wherever they are named. */
  private static final String FULL_NAME =
      "case when exists (select 1 from account other where other.id <> account.id"
          + " and lower(other.full_name) = lower(account.full_name))"
          + " then full_name || ' (' || name || ')' else full_name end as full_name";

  private static final String COLUMNS =
      "select id, name, "
          + FULL_NAME
          + ", role, is_active <> 0 as is_active, generation from account ";

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
                sql.sql("select " + FULL_NAME + " from account where id = ?")
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

  /**
   * Lets a person in by name and password. A try is counted before it is looked at, so that of many
   * at once no more are looked at than of as many one after the other; an unknown name, a locked
   * account and a wrong password take as long and are told alike.
   */
  public AccountOutcome<Account> signIn(String name, String password) {
    Optional<Tried> tried = tried(name.strip().toLowerCase(Locale.ROOT));
    boolean isRight = Passwords.isRight(password, tried.flatMap(Tried::password));
    if (tried.isPresent() && isRight) {
      return entered(tried.get().id());
    }
    store.change(sql -> noted(sql, tried));
    return AccountOutcome.of(Refused.WRONG);
  }

  /**
   * A try that may be looked at.
   *
   * @param id the account
   * @param password its hash, if it has one
   * @param failures how many tries there are with this one
   */
  private record Tried(String id, Optional<String> password, long failures) {}

  /** Counts a try; the last that is left locks the account until it turns out to be right. */
  private Optional<Tried> tried(String name) {
    long now = clock.millis();
    long until = now + Duration.ofMinutes(Setting.LOCK_OUT_MINUTES.number()).toMillis();
    int most = Setting.LOCK_OUT_FAILURES.number();
    return store.change(
        sql ->
            sql.sql(
                    "update account set"
                        + " locked_until = case when failures = ? then ? else 0 end,"
                        + " failures = case when failures >= ? then 1 else failures + 1 end"
                        + " where name = ? and is_active <> 0 and locked_until <= ?"
                        + " returning id, password, failures")
                .params(most - 1, until, most, name, now)
                .query(
                    (row, index) ->
                        new Tried(
                            row.getString("id"),
                            Optional.ofNullable(row.getString("password")),
                            row.getLong("failures")))
                .optional());
  }

  private AuditEntry noted(JdbcClient sql, Optional<Tried> tried) {
    String id = tried.map(Tried::id).orElse("");
    AuditEntry refused = trail.append(sql, Note.of(id, Action.SIGN_IN_REFUSED, id));
    boolean isLocked =
        tried.filter(t -> t.failures() >= Setting.LOCK_OUT_FAILURES.number()).isPresent();
    return isLocked ? trail.append(sql, Note.of(id, Action.ACCOUNT_LOCKED, id)) : refused;
  }

  private AccountOutcome<Account> entered(String id) {
    return store.change(
        sql -> {
          unlock(sql, id);
          trail.append(sql, Note.of(id, Action.SIGNED_IN, id));
          return AccountOutcome.of(
              sql.sql(COLUMNS + "where id = ?").param(id).query(Account.class).single());
        });
  }

  static void unlock(JdbcClient sql, String id) {
    sql.sql("update account set failures = 0, locked_until = 0 where id = ?").param(id).update();
  }

  /** Notes that a person left. */
  public void signOut(Account account) {
    note(account.id(), Action.SIGNED_OUT, account.id());
  }

  /** Makes an account without a password; a one-time code lets its person in to set one. */
  public AccountOutcome<Account> add(Newcomer newcomer, String by) {
    Optional<Refused> refused = newcomer.check();
    if (refused.isPresent()) {
      return AccountOutcome.of(refused.get());
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
            return AccountOutcome.of(Refused.NAME_TAKEN);
          }
          trail.append(sql, note(sql, by, Action.ACCOUNT_MADE, id));
          return AccountOutcome.of(
              sql.sql(COLUMNS + "where id = ?").param(id).query(Account.class).single());
        });
  }

  /** Closes an account; what its person did stays under the person's name. */
  public AccountOutcome<String> close(String id, String by) {
    if (id.equals(by)) {
      return AccountOutcome.of(Refused.ITSELF);
    }
    return store.change(
        sql -> {
          sql.sql("update account set is_active = 0 where id = ?").param(id).update();
          trail.append(sql, note(sql, by, Action.ACCOUNT_CLOSED, id));
          return AccountOutcome.of(id);
        });
  }

  /** Whether an account has a password, which whoever changes it must know. */
  public boolean isWithPassword(Account account) {
    return store.look(
        sql ->
            sql.sql("select count(*) from account where id = ? and password is not null")
                    .param(account.id())
                    .query(Long.class)
                    .single()
                == 1);
  }

  /**
   * Changes the password of an account; whoever does so knows the one before, if there is one, and
   * every session that was begun with that ends.
   */
  public AccountOutcome<Account> change(Account account, String before, String password) {
    Optional<Refused> refused = Passwords.check(password);
    if (refused.isPresent()) {
      return AccountOutcome.of(refused.get());
    }
    if (isWithPassword(account)
        && signIn(account.name(), before) instanceof AccountOutcome.NotDone<Account>) {
      return AccountOutcome.of(Refused.BEFORE);
    }
    return withPassword(account, password);
  }

  /** Sets the password of an account, and ends its sessions. */
  public AccountOutcome<Account> withPassword(Account account, String password) {
    Optional<Refused> refused = Passwords.check(password);
    if (refused.isPresent()) {
      return AccountOutcome.of(refused.get());
    }
    String hash = Passwords.hash(password);
    return store.change(
        sql -> {
          sql.sql("update account set password = ?, generation = generation + 1 where id = ?")
              .params(hash, account.id())
              .update();
          trail.append(sql, note(sql, account.id(), Action.PASSWORD_SET, account.id()));
          return AccountOutcome.of(
              sql.sql(COLUMNS + "where id = ?").param(account.id()).query(Account.class).single());
        });
  }

  /** Takes the password of an account away and ends its sessions: a code lets its person in. */
  static Note withoutPassword(JdbcClient sql, String id, String by) {
    sql.sql("update account set password = null, generation = generation + 1 where id = ?")
        .param(id)
        .update();
    return note(sql, by, Action.CODE_MADE, id);
  }

  /** What the trail notes of an account with what it now is. */
  private static Note note(JdbcClient sql, String by, Action action, String id) {
    return new Note(by, action, id, digests(sql, id).getOrDefault(id, ""));
  }

  /** The digest of every account as it is kept now, by its identifier. */
  public static Map<String, String> digests(JdbcClient sql) {
    return digests(sql, "");
  }

  private static Map<String, String> digests(JdbcClient sql, String only) {
    return sql
        .sql(
            "select id, name, full_name, role, coalesce(password, '') as password, is_active"
                + " from account where ? = '' or id = ?")
        .params(only, only)
        .query(
            (row, index) ->
                Map.entry(
                    row.getString("id"),
                    Digest.of(
                        row.getString("id"),
                        row.getString("name"),
                        row.getString("full_name"),
                        row.getString("role"),
                        row.getString("password"),
                        row.getString("is_active"))))
        .list()
        .stream()
        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
  }

  /**
   * Writes every account that the trail does not hold yet into it, once: those of a store that was
   * made before the trail held accounts. Later ones without an entry are a fault.
   */
  public void chain() {
    store.change(
        sql -> {
          boolean isDone =
              sql.sql("select count(*) from audit where action = ?")
                      .param(Action.ACCOUNTS_CHAINED.word())
                      .query(Long.class)
                      .single()
                  > 0;
          if (!isDone) {
            digests(sql)
                .forEach((id, d) -> trail.append(sql, new Note("", Action.ACCOUNT_KEPT, id, d)));
            trail.append(sql, Note.of("", Action.ACCOUNTS_CHAINED, ""));
          }
          return isDone;
        });
  }

  private void note(String account, Action action, String subject) {
    store.change(sql -> trail.append(sql, Note.of(account, action, subject)));
  }
}
