package cistern.clinic.account;

import cistern.clinic.audit.Action;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.audit.Digest;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Store;
import java.time.Clock;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Codes that let a person in once. The store holds only their hash. */
public final class OneTimeCodes {

  private final Store store;
  private final AuditTrail trail;
  private final Clock clock;
  private final Chance chance;

  private OneTimeCodes(Store store, AuditTrail trail, Clock clock, Chance chance) {
    this.store = store;
    this.trail = trail;
    this.clock = clock;
    this.chance = chance;
  }

  /** The codes of a store. */
  public static OneTimeCodes of(Store store, AuditTrail trail, Clock clock, Chance chance) {
    return new OneTimeCodes(store, trail, clock, chance);
  }

  /**
   * A new code that lets the person of an account in; earlier ones end, and so do the account's
   * password and its sessions: whoever comes in instead of its person is noticed.
   */
  public String make(Account account, String by) {
    return make(Optional.of(account.id()), by);
  }

  /** A new code with which the first administrator makes an account; earlier ones end. */
  public String makeFirst() {
    return make(Optional.empty(), "");
  }

  private String make(Optional<String> account, String by) {
    String code = chance.code();
    long until = clock.millis() + Duration.ofMinutes(Setting.CODE_MINUTES.number()).toMillis();
    return store.change(
        sql -> {
          end(sql, account);
          insert(sql, hash(code), account, until);
          trail.append(
              sql,
              account
                  .map(id -> Accounts.withoutPassword(sql, id, by))
                  .orElseGet(() -> Note.of(by, Action.CODE_MADE, "")));
          return code;
        });
  }

  private static void insert(JdbcClient sql, String hash, Optional<String> account, long until) {
    if (account.isPresent()) {
      sql.sql("insert into one_time_code (hash, account, expires_at) values (?, ?, ?)")
          .params(hash, account.get(), until)
          .update();
    } else {
      sql.sql("insert into one_time_code (hash, expires_at) values (?, ?)")
          .params(hash, until)
          .update();
    }
  }

  private static void end(JdbcClient sql, Optional<String> account) {
    if (account.isPresent()) {
      sql.sql("delete from one_time_code where account = ?").param(account.get()).update();
    } else {
      sql.sql("delete from one_time_code where account is null").update();
    }
  }

  /** Whether a code is one for the first administrator and may still be used. */
  public boolean isFirst(String code) {
    return store.look(
        sql ->
            sql.sql(
                        "select count(*) from one_time_code where hash = ? and account is null"
                            + " and used_at is null and expires_at > ?")
                    .params(hash(code), clock.millis())
                    .query(Long.class)
                    .single()
                == 1);
  }

  /** Uses a code of an account up, and lets its person in; a lock is lifted. */
  public AccountOutcome<Account> signIn(String code, Accounts accounts) {
    return store.change(
        sql -> {
          Optional<Account> account = use(sql, code).flatMap(accounts::find);
          if (account.isEmpty()) {
            trail.append(sql, Note.of("", Action.SIGN_IN_REFUSED, ""));
            return AccountOutcome.of(Refused.CODE);
          }
          String id = account.get().id();
          Accounts.unlock(sql, id);
          trail.append(sql, Note.of(id, Action.CODE_USED, id));
          return AccountOutcome.of(account.get());
        });
  }

  /** Uses the code of the first administrator up and makes the account, or neither. */
  public AccountOutcome<Account> begin(
      String code, Accounts accounts, Accounts.Newcomer newcomer, String password) {
    Optional<Refused> refused = newcomer.check().or(() -> Passwords.check(password));
    if (refused.isPresent()) {
      return AccountOutcome.of(refused.get());
    }
    return store.change(
        sql -> {
          if (!useFirst(sql, code) || !accounts.isEmpty()) {
            return AccountOutcome.of(Refused.CODE);
          }
          return switch (accounts.add(newcomer, "")) {
            case AccountOutcome.NotDone<Account> not -> not;
            case AccountOutcome.Done<Account> done -> accounts.withPassword(done.value(), password);
          };
        });
  }

  private boolean useFirst(JdbcClient sql, String code) {
    return sql.sql(
                "delete from one_time_code where hash = ? and account is null and expires_at > ?")
            .params(hash(code), clock.millis())
            .update()
        == 1;
  }

  private Optional<String> use(JdbcClient sql, String code) {
    return sql.sql(
            "update one_time_code set used_at = ? where hash = ? and account is not null"
                + " and used_at is null and expires_at > ? returning account")
        .params(clock.millis(), hash(code), clock.millis())
        .query(String.class)
        .optional();
  }

  private static String hash(String code) {
    return Digest.of(code.strip().toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", ""));
  }
}
