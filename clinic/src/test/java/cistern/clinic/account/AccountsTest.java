package cistern.clinic.account;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Accounts.Newcomer;
import cistern.clinic.cases.Clinic;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Location;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Accounts and codes on both engines. */
class AccountsTest {

  private static final AccountOutcome<Account> WRONG = AccountOutcome.of(Refused.WRONG);
  private static final String PASSWORD = "an invented sentence";

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void first_withItsCode_makesTheOnlyAdministratorOnce(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Newcomer chief = new Newcomer("chief", "Dr Invented", Role.ADMINISTRATOR);
      String old = clinic.codes().makeFirst();
      String code = clinic.codes().makeFirst();

      assertThat(clinic.codes().isFirst(old)).isFalse();
      assertThat(clinic.codes().isFirst(code.toLowerCase(java.util.Locale.ROOT))).isTrue();
      assertThat(clinic.codes().begin(old, clinic.accounts(), chief, PASSWORD))
          .isEqualTo(AccountOutcome.of(Refused.CODE));
      assertThat(clinic.codes().begin(code, clinic.accounts(), chief, "short"))
          .isEqualTo(AccountOutcome.of(Refused.SHORT));
      Account made = Clinic.done(clinic.codes().begin(code, clinic.accounts(), chief, PASSWORD));

      assertThat(made.role()).isEqualTo(Role.ADMINISTRATOR);
      assertThat(clinic.codes().begin(code, clinic.accounts(), chief, PASSWORD))
          .isEqualTo(AccountOutcome.of(Refused.CODE));
      assertThat(clinic.accounts().signIn(" CHIEF ", PASSWORD)).isEqualTo(AccountOutcome.of(made));
      assertThat(clinic.accounts().isEmpty()).isFalse();
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void signIn_afterTooManyWrongPasswords_isLockedForAWhileAndFreedByACode(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account nurse = clinic.person(Role.NURSE);
      nurse = Clinic.done(clinic.accounts().withPassword(nurse, PASSWORD));
      for (int i = 1; i <= Setting.LOCK_OUT_FAILURES.number(); i++) {
        assertThat(clinic.accounts().signIn("nurse", "wrong")).isEqualTo(WRONG);
      }
      // Locked, and told like a wrong password and like a name that nobody has.
      assertThat(clinic.accounts().signIn("nurse", PASSWORD)).isEqualTo(WRONG);
      assertThat(clinic.accounts().signIn("nobody", PASSWORD)).isEqualTo(WRONG);
      String code = clinic.codes().make(nurse, "the test itself");
      assertThat(clinic.codes().signIn(code, clinic.accounts()))
          .isInstanceOf(AccountOutcome.Done.class);
      assertThat(clinic.codes().signIn(code, clinic.accounts()))
          .isEqualTo(AccountOutcome.of(Refused.CODE));
      // A code ends the password, and the sessions that were begun with it.
      assertThat(clinic.accounts().signIn("nurse", PASSWORD)).isEqualTo(WRONG);
      Account now = clinic.accounts().find(nurse.id()).orElseThrow();
      assertThat(now.generation()).isGreaterThan(nurse.generation());
      Clinic.done(clinic.accounts().withPassword(now, PASSWORD));
      for (int i = 0; i < Setting.LOCK_OUT_FAILURES.number(); i++) {
        clinic.accounts().signIn("nurse", "wrong");
      }
      assertThat(clinic.accounts().signIn("nurse", PASSWORD)).isEqualTo(WRONG);
    }
    Clock later =
        Clock.offset(
            Clock.fixed(Clinic.THEN, ZoneOffset.UTC),
            Duration.ofMinutes(Setting.LOCK_OUT_MINUTES.number()).plusMillis(1));
    try (Clinic clinic = Clinic.open(location, later, 8)) {
      assertThat(clinic.accounts().signIn("nurse", "wrong")).isEqualTo(WRONG);
      assertThat(clinic.accounts().signIn("nurse", PASSWORD))
          .isInstanceOf(AccountOutcome.Done.class);
    }
  }

  /** Of many wrong tries at once as many are looked at as of many one after the other. */
  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void signIn_manyTimesAtOnce_isLookedAtNoOftenerThanTheLimit(Location location) throws Exception {
    try (Clinic clinic = Clinic.open(location);
        ExecutorService many = Executors.newVirtualThreadPerTaskExecutor()) {
      Clinic.done(clinic.accounts().withPassword(clinic.person(Role.NURSE), PASSWORD));
      List<Callable<AccountOutcome<Account>>> tries =
          Collections.nCopies(8, () -> clinic.accounts().signIn("nurse", "wrong"));
      for (Future<AccountOutcome<Account>> one : many.invokeAll(tries)) {
        assertThat(one.get()).isEqualTo(WRONG);
      }

      // A try that is looked at is noted with its account, the others without.
      long seen =
          clinic
              .store()
              .look(
                  sql ->
                      sql.sql(
                              "select count(*) from audit where action = 'sign-in-refused'"
                                  + " and subject <> ''")
                          .query(Long.class)
                          .single());
      assertThat(seen).isEqualTo(Setting.LOCK_OUT_FAILURES.number());
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void change_ofAPassword_needsTheOneBefore(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account nurse = clinic.person(Role.NURSE);
      Account first = Clinic.done(clinic.accounts().change(nurse, "", PASSWORD));
      assertThat(clinic.accounts().change(first, "wrong", "another invented one"))
          .isEqualTo(AccountOutcome.of(Refused.BEFORE));
      Account second =
          Clinic.done(clinic.accounts().change(first, PASSWORD, "another invented one"));
      assertThat(second.generation()).isGreaterThan(first.generation());
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void fullName_ofTwoPeopleOfOneName_tellsThemApart(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account one =
          Clinic.done(clinic.accounts().add(new Newcomer("one", "Dr Same", Role.NURSE), ""));
      assertThat(one.fullName()).isEqualTo("Dr Same");
      Account two =
          Clinic.done(clinic.accounts().add(new Newcomer("two", "dr same", Role.CLINICIAN), ""));
      assertThat(two.fullName()).isEqualTo("dr same (two)");
      assertThat(clinic.accounts().fullName(one.id())).isEqualTo("Dr Same (one)");
    }
  }

  /** The prefix: the form of bcrypt's hashes, with the logarithm of its rounds. */
  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void password_inTheStore_isASaltedHashOfBcrypt(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Clinic.done(clinic.accounts().withPassword(clinic.person(Role.NURSE), PASSWORD));
      Clinic.done(clinic.accounts().withPassword(clinic.person(Role.AUDITOR), PASSWORD));

      List<String> stored =
          clinic
              .store()
              .look(s -> s.sql("select password from account").query(String.class).list());

      assertThat(stored).hasSize(2).doesNotHaveDuplicates();
      assertThat(stored).allMatch(h -> h.matches("\\$2[aby]\\$10\\$[./A-Za-z0-9]{53}"));
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void code_afterItsTime_letsNobodyIn(Location location) {
    String code;
    try (Clinic clinic = Clinic.open(location)) {
      code = clinic.codes().make(clinic.person(Role.NURSE), "the test itself");
    }
    Clock later =
        Clock.offset(
            Clock.fixed(Clinic.THEN, ZoneOffset.UTC),
            Duration.ofMinutes(Setting.CODE_MINUTES.number()));
    try (Clinic clinic = Clinic.open(location, later, 8)) {
      assertThat(clinic.codes().signIn(code, clinic.accounts()))
          .isEqualTo(AccountOutcome.of(Refused.CODE));
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void close_ofAnAccount_endsItAndKeepsItsName(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account nurse = clinic.person(Role.NURSE);
      Account chief = clinic.person(Role.ADMINISTRATOR);
      Clinic.done(clinic.accounts().withPassword(nurse, PASSWORD));
      String code = clinic.codes().make(nurse, chief.id());

      assertThat(clinic.accounts().close(chief.id(), chief.id()))
          .isEqualTo(AccountOutcome.of(Refused.ITSELF));
      Clinic.done(clinic.accounts().close(nurse.id(), chief.id()));

      assertThat(clinic.accounts().signIn("nurse", PASSWORD))
          .isEqualTo(AccountOutcome.of(Refused.WRONG));
      assertThat(clinic.codes().signIn(code, clinic.accounts()))
          .isEqualTo(AccountOutcome.of(Refused.CODE));
      assertThat(clinic.accounts().find(nurse.id())).isEmpty();
      assertThat(clinic.accounts().fullName(nurse.id())).isEqualTo("Invented nurse");
      assertThat(clinic.accounts().fullName("unknown")).isEqualTo("unknown");
      assertThat(clinic.accounts().all()).extracting(Account::isActive).contains(false, true);
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void add_ofWhatIsNotRight_saysWhy(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      clinic.person(Role.NURSE);
      assertThat(clinic.accounts().add(new Newcomer("nurse", "Second", Role.NURSE), ""))
          .isEqualTo(AccountOutcome.of(Refused.NAME_TAKEN));
      assertThat(clinic.accounts().add(new Newcomer("A B", "Third", Role.NURSE), ""))
          .isEqualTo(AccountOutcome.of(Refused.NAME));
      assertThat(clinic.accounts().add(new Newcomer("third", " ", Role.NURSE), ""))
          .isEqualTo(AccountOutcome.of(Refused.FULL_NAME));
      assertThat(clinic.accounts().withPassword(clinic.accounts().all().getFirst(), "ä".repeat(40)))
          .isEqualTo(AccountOutcome.of(Refused.LONG));
      assertThat(clinic.accounts().signIn("nobody", "ä".repeat(40)))
          .isEqualTo(AccountOutcome.of(Refused.WRONG));
    }
  }
}
