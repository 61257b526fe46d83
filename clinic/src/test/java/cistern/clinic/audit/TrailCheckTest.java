package cistern.clinic.audit;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Account;
import cistern.clinic.account.Role;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Clinic;
import cistern.clinic.cases.StoreVerification;
import cistern.clinic.store.Engines;
import cistern.clinic.store.Location;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What somebody who may write to the file itself can do, and what the check says of it. */
class TrailCheckTest {

  private final Location location = Engines.folder();

  @BeforeEach
  void aCaseWithTwoVersions() {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      String id = clinic.cases().add("question", "{}", clinician.id()).caseId();
      clinic.cases().save(id, new Change(1, "results", "{ }", clinician.id()));
      clinic.cases().read(id, clinician.id());
    }
  }

  @Test
  void check_ofAWholeStore_findsNothing() {
    assertThat(check().isWhole()).isTrue();
    assertThat(check().entries()).isEqualTo(4);
    assertThat(check().head()).hasSize(64);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "update audit set account = 'nobody' where number = 2 | entry 2 is not as it was written",
        "delete from audit where number = 2 | entries 2 to 2 are missing",
        "delete from audit where number = 4 | the trail ends at entry 3, its head says 4",
        "update case_version set workup = '[]' where number = 1 | is not as entry 2 says",
        "update case_version set step = 'x' where number = 2 | is not as entry 3 says",
        "delete from case_version where number = 2 | was written in entry 3 and is gone",
        "insert into case_version select case_id, 9, at, account, step, workup"
            + " from case_version where number = 1 | is kept, but no entry tells of it",
      })
  void check_ofAStoreThatSomebodyChanged_saysWhere(String change, String fault) {
    try (Clinic clinic = Clinic.open(location)) {
      clinic
          .store()
          .change(
              sql -> {
                List.of("audit_no_update", "audit_no_delete").forEach(t -> drop(sql, t));
                List.of("case_version_no_update", "case_version_no_delete")
                    .forEach(t -> drop(sql, t));
                return sql.sql(change).update();
              });
    }

    assertThat(check().faults()).anyMatch(f -> f.contains(fault));
  }

  private static void drop(org.springframework.jdbc.core.simple.JdbcClient sql, String trigger) {
    sql.sql("drop trigger " + trigger).update();
  }

  private TrailCheck check() {
    try (Clinic clinic = Clinic.open(location)) {
      return StoreVerification.check(clinic.store());
    }
  }
}
