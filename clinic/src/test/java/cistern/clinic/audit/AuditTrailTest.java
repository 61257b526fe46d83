package cistern.clinic.audit;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Role;
import cistern.clinic.audit.AuditTrail.Filter;
import cistern.clinic.audit.AuditTrail.Note;
import cistern.clinic.cases.Clinic;
import cistern.clinic.store.Location;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Looking for entries, on both engines. */
class AuditTrailTest {

  private static List<Long> numbers(List<AuditEntry> entries) {
    return entries.stream().map(AuditEntry::number).toList();
  }

  /** Entries 1 and 2 make the accounts; then come those of two cases. */
  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void entries_ofACaseOrAPerson_areFoundPageByPage(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      String clinician = clinic.person(Role.CLINICIAN).id();
      String nurse = clinic.person(Role.NURSE).id();
      String one = clinic.cases().add("question", "{}", clinician).caseId();
      clinic.cases().add("question", "{}", clinician);
      clinic.cases().read(one, nurse);
      clinic.store().change(s -> clinic.trail().append(s, Note.of("", Action.LIST_READ, "x%/y")));

      clinic
          .store()
          .look(
              sql -> {
                Filter all = Filter.NONE;
                assertThat(numbers(AuditTrail.before(sql, all, 5, 2))).containsExactly(4L, 3L);
                assertThat(numbers(AuditTrail.after(sql, all, 2, 2))).containsExactly(4L, 3L);
                assertThat(numbers(AuditTrail.before(sql, new Filter(one, ""), 99, 9)))
                    .containsExactly(5L, 3L);
                assertThat(numbers(AuditTrail.after(sql, new Filter(one, ""), 3, 9)))
                    .containsExactly(5L);
                assertThat(numbers(AuditTrail.before(sql, new Filter("", nurse), 99, 9)))
                    .containsExactly(5L, 2L);
                assertThat(numbers(AuditTrail.before(sql, new Filter(one, clinician), 99, 9)))
                    .containsExactly(3L);
                assertThat(AuditTrail.before(sql, new Filter("%", ""), 99, 9)).isEmpty();
                return true;
              });
    }
  }
}
