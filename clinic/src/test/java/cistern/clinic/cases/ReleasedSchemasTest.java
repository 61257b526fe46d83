package cistern.clinic.cases;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Account;
import cistern.clinic.audit.TrailCheck;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.store.Location;
import cistern.clinic.store.Released;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Stores of every released schema, brought to the newest with everything in them. */
class ReleasedSchemasTest {

  /** The hash of the last entry, as the release printed it when the store was written. */
  private static final String HEAD =
      "07808a7945640e44d929dd931c56e9bf86c88ee219132b6f47715be13b50150b";

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void open_ofAStoreOfSchema2_keepsChainCasesReportsDraftsAndAccounts(Location location) {
    Released.write(2, location);

    try (Clinic clinic = Clinic.open(location)) {
      TrailCheck check = StoreVerification.check(clinic.store());
      assertThat(check.faults()).isEmpty();
      assertThat(check.entries()).isEqualTo(14);
      assertThat(check.head()).isEqualTo(HEAD);
      Account clinician =
          Clinic.done(clinic.accounts().signIn("clinician", "an invented sentence"));
      List<CaseVersion> cases = clinic.cases().list(clinician.id());
      assertThat(cases).extracting(CaseVersion::number).containsExactlyInAnyOrder(1L, 2L);
      CaseVersion signed = cases.stream().filter(c -> c.number() == 2).findFirst().orElseThrow();
      assertThat(clinic.cases().version(signed.caseId(), 1).orElseThrow().workup())
          .contains("\"id\": \"typical-ms\"");
      checkReports(clinic, signed, clinician);
      CaseVersion drafted = cases.stream().filter(c -> c.number() == 1).findFirst().orElseThrow();
      Drafts.Owner owner = new Drafts.Owner(clinician.id(), drafted.caseId(), "results");
      assertThat(clinic.drafts().find(owner).orElseThrow().typed())
          .isEqualTo("albumin.csf=21+mg%2FdL");
    }
  }

  /** What was signed is as it was, and the store goes on: another change, another report. */
  private static void checkReports(Clinic clinic, CaseVersion signed, Account clinician) {
    List<SignedReport> reports = clinic.reports().of(signed.caseId());
    assertThat(reports).extracting(SignedReport::reason).containsExactly("", "a slip of the pen");
    assertThat(reports).allMatch(r -> r.hash().equals(r.computedHash()));
    assertThat(reports).allMatch(r -> r.content().papers().isEmpty());
    assertThat(new String(reports.getFirst().content().pdf(), StandardCharsets.UTF_8))
        .isEqualTo("%PDF-1.7 invented");
    assertThat(reports.getLast().content().pdf()).containsExactly(0, 1, 255, '\'', '\\');
    Saving saving =
        clinic.cases().save(signed.caseId(), new Change(2, "bands", "{}", clinician.id()));
    assertThat(saving).isInstanceOf(Saving.Kept.class);
    Reports.Signing third =
        clinic
            .reports()
            .sign(
                ((Saving.Kept) saving).version(),
                reports.getFirst().content(),
                "after the release",
                clinician.id());
    assertThat(third).isInstanceOf(Reports.Signing.Signed.class);
    assertThat(StoreVerification.check(clinic.store()).faults()).isEmpty();
  }
}
