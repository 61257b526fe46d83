package cistern.clinic.house;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.clinic.account.Account;
import cistern.clinic.account.Role;
import cistern.clinic.cases.Clinic;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import cistern.clinic.store.Store;
import cistern.clinic.store.StoreCopy;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rules of a house, kept for good. */
class RuleBookTest {

  private static RuleBook book(Clinic clinic) {
    return RuleBook.of(clinic.store(), clinic.trail(), Clock.systemUTC());
  }

  private static RuleChange change(long number, Account by, String rule, String value) {
    return new RuleChange(number, "", by.id(), rule, value, "1", "Invented memo", "a test");
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void add_aChange_isInForceInTheTrailInBackupsAndNeverChanged(Location location) {
    try (Clinic clinic = Clinic.open(location);
        Store copy = Store.open(Engines.folder())) {
      RuleBook book = book(clinic);
      Account by = clinic.person(Role.CLINICIAN);
      assertThat(book.add(change(1, by, "bands.cut-off", "4"))).isPresent();
      assertThat(book.add(change(1, by, "bands.cut-off", "3"))).isEmpty();
      assertThat(book.add(change(2, by, "kappa-index.upper", "7"))).isPresent();
      assertThat(book.add(change(3, by, "bands.cut-off", ""))).isPresent();

      assertThat(book.all()).extracting(RuleChange::typed).containsExactly("4", "7", "");
      assertThat(book.inForce()).extracting(RuleChange::rule).containsExactly("kappa-index.upper");
      StoreCopy.copy(clinic.store(), copy);
      assertThat(RuleBook.of(copy, clinic.trail(), Clock.systemUTC()).all()).isEqualTo(book.all());
      assertThat(StoreVerification.check(copy).faults()).isEmpty();
      for (String sql : List.of("update rule_change set typed = '9'", "delete from rule_change")) {
        assertThatThrownBy(() -> clinic.store().change(s -> s.sql(sql).update()))
            .hasStackTraceContaining("append-only");
      }
      assertThat(StoreVerification.check(clinic.store()).faults()).isEmpty();
    }
  }

  @Test
  void verify_ofAChangeThatWasWrittenOver_namesIt() {
    try (Clinic clinic = Clinic.open(Engines.folder())) {
      book(clinic).add(change(1, clinic.person(Role.CLINICIAN), "bands.cut-off", "4"));
      clinic.store().change(s -> s.sql("drop trigger rule_change_no_update").update());
      clinic.store().change(s -> s.sql("update rule_change set typed = '1'").update());

      assertThat(StoreVerification.check(clinic.store()).faults())
          .singleElement()
          .asString()
          .contains("rule/1 is not as entry");
    }
  }
}
