package cistern.clinic.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import cistern.clinic.account.Account;
import cistern.clinic.account.Role;
import cistern.clinic.audit.AuditEntry;
import cistern.clinic.audit.AuditTrail;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.store.Location;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Cases, drafts and reports on both engines. */
class CasesTest {

  private static final String FIRST = "{ \"workup\": 1, \"id\": \"case\" }";
  private static final String SECOND = "{ \"workup\": 1, \"id\": \"case\", \"results\": [] }";

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void save_onTheLastVersion_keepsBoth(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      CaseVersion first = clinic.cases().add("question", FIRST, clinician.id());

      Saving saving =
          clinic.cases().save(first.caseId(), new Change(1, "results", SECOND, clinician.id()));

      assertThat(saving).isInstanceOf(Saving.Kept.class);
      assertThat(clinic.cases().versions(first.caseId()))
          .extracting(CaseVersion::workup)
          .containsExactly(FIRST, SECOND);
      assertThat(clinic.cases().find(first.caseId()).orElseThrow().number()).isEqualTo(2);
      assertThat(clinic.cases().version(first.caseId(), 1)).contains(first);
      assertThat(StoreVerification.check(clinic.store()).faults()).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void save_onAnOlderVersion_showsTheOtherChangeAndKeepsIt(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      Account laboratory = clinic.person(Role.LABORATORY);
      String id = clinic.cases().add("question", FIRST, clinician.id()).caseId();
      clinic.cases().save(id, new Change(1, "results", SECOND, laboratory.id()));

      Saving saving = clinic.cases().save(id, new Change(1, "bands", FIRST, clinician.id()));

      assertThat(saving).isInstanceOf(Saving.Collided.class);
      CaseVersion current = ((Saving.Collided) saving).current();
      assertThat(current.account()).isEqualTo(laboratory.id());
      assertThat(current.workup()).isEqualTo(SECOND);
      Saving ahead = clinic.cases().save(id, new Change(7, "bands", FIRST, clinician.id()));
      assertThat(ahead).isInstanceOf(Saving.Collided.class);
      assertThat(clinic.cases().versions(id)).hasSize(2);
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void save_byManyAtOnce_losesNothing(Location location) throws Exception {
    try (Clinic clinic = Clinic.open(location);
        ExecutorService crowd = Executors.newFixedThreadPool(4)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      String id = clinic.cases().add("question", FIRST, clinician.id()).caseId();
      List<Future<List<Long>>> writers = new ArrayList<>();
      for (int writer = 0; writer < 4; writer++) {
        String step = "writer-" + writer;
        writers.add(crowd.submit(() -> saveTen(clinic, id, step, clinician)));
      }

      List<Long> acknowledged = new ArrayList<>();
      for (Future<List<Long>> writer : writers) {
        acknowledged.addAll(writer.get());
      }

      assertThat(acknowledged).hasSize(40).doesNotHaveDuplicates();
      assertThat(clinic.cases().versions(id))
          .extracting(CaseVersion::number)
          .hasSize(41)
          .containsAll(acknowledged);
      assertThat(StoreVerification.check(clinic.store()).faults()).isEmpty();
    }
  }

  private static List<Long> saveTen(Clinic clinic, String id, String step, Account by) {
    List<Long> kept = new ArrayList<>();
    while (kept.size() < 10) {
      long base = clinic.cases().find(id).orElseThrow().number();
      switch (clinic.cases().save(id, new Change(base, step, SECOND, by.id()))) {
        case Saving.Kept done -> kept.add(done.version().number());
        case Saving.Collided collided ->
            assertThat(collided.current().number()).isGreaterThan(base);
      }
    }
    return kept;
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void versions_cannotBeOverwrittenOrRemoved(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      clinic.cases().add("question", FIRST, clinician.id());

      for (String change :
          List.of(
              "update case_version set workup = '{}'",
              "delete from case_version",
              "update audit set account = ''",
              "delete from audit")) {
        assertThatThrownBy(() -> clinic.store().change(sql -> sql.sql(change).update()), change)
            .hasStackTraceContaining("append-only");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void read_byAPerson_standsInTheTrail(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      Account nurse = clinic.person(Role.NURSE);
      String id = clinic.cases().add("question", FIRST, clinician.id()).caseId();

      assertThat(clinic.cases().read(id, nurse.id())).isPresent();
      assertThat(clinic.cases().read("no such case", nurse.id())).isEmpty();
      assertThat(clinic.cases().list(nurse.id())).hasSize(1);

      List<AuditEntry> last = clinic.store().look(sql -> AuditTrail.last(sql, 2));
      assertThat(last)
          .extracting(e -> e.action() + " " + e.account() + " " + e.subject())
          .containsExactly("list-read " + nurse.id() + " ", "case-read " + nurse.id() + " " + id);
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void sign_twice_needsAReasonAndKeepsTheFirst(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      CaseVersion first = clinic.cases().add("question", FIRST, clinician.id());
      SignedReport.Content content = content("first");

      SignedReport report = signed(clinic.reports().sign(first, content, "", clinician.id()));
      var without = clinic.reports().sign(first, content("second"), " ", clinician.id());
      SignedReport amended =
          signed(
              clinic.reports().sign(first, content("second"), "a slip of the pen", clinician.id()));

      assertThat(without).isEqualTo(new Reports.Signing.Refused(Reports.NotSigned.REASON));
      assertThat(amended.number()).isEqualTo(2);
      assertThat(clinic.reports().read(first.caseId(), 1, clinician.id()).orElseThrow().hash())
          .isEqualTo(report.hash())
          .isEqualTo(report.computedHash())
          .isNotEqualTo(amended.hash());
      assertThat(clinic.reports().of(first.caseId()))
          .extracting(r -> r.content().page())
          .containsExactly("first", "second");
      assertThat(clinic.reports().signedVersion(first.caseId())).hasValue(1L);
      assertThat(StoreVerification.check(clinic.store()).faults()).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void report_whosePapersOrPolicySomebodyChanged_isFound(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      CaseVersion first = clinic.cases().add("question", FIRST, clinician.id());
      SignedReport report =
          signed(clinic.reports().sign(first, content("page"), "", clinician.id()));
      SignedReport.Content kept =
          clinic.reports().read(first.caseId(), 1, clinician.id()).orElseThrow().content();

      assertThat(kept.papers().orElseThrow().policy()).isEqualTo("{}");
      assertThat(kept.papers().orElseThrow().letter()).isEqualTo(bytes("a letter"));
      for (Optional<SignedReport.Papers> other :
          List.of(
              Optional.<SignedReport.Papers>empty(),
              Optional.of(papers("{ }", "a letter")),
              Optional.of(papers("{}", "another letter")))) {
        SignedReport.Content changed =
            new SignedReport.Content(kept.madeBy(), kept.workup(), kept.page(), kept.pdf(), other);
        assertThat(with(report, changed).computedHash()).isNotEqualTo(report.hash());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void sign_ofAVersionThatIsNotTheLast_isRefused(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      CaseVersion first = clinic.cases().add("question", FIRST, clinician.id());
      clinic.cases().save(first.caseId(), new Change(1, "results", SECOND, clinician.id()));

      assertThat(clinic.reports().sign(first, content("page"), "", clinician.id()))
          .isEqualTo(new Reports.Signing.Refused(Reports.NotSigned.CHANGED));
      assertThat(clinic.reports().of(first.caseId())).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void draft_keptTwice_isTheLater(Location location) {
    try (Clinic clinic = Clinic.open(location)) {
      Account clinician = clinic.person(Role.CLINICIAN);
      String id = clinic.cases().add("question", FIRST, clinician.id()).caseId();
      Drafts.Owner owner = new Drafts.Owner(clinician.id(), id, "results");

      clinic.drafts().keep(owner, 1, "albumin=1");
      clinic.drafts().keep(owner, 1, "albumin=12");

      assertThat(clinic.drafts().find(owner).orElseThrow().typed()).isEqualTo("albumin=12");
      clinic.drafts().drop(owner);
      assertThat(clinic.drafts().find(owner)).isEmpty();
    }
  }

  private static SignedReport.Content content(String page) {
    return new SignedReport.Content(
        "Cistern test", FIRST, page, bytes("a PDF"), Optional.of(papers("{}", "a letter")));
  }

  private static SignedReport.Papers papers(String policy, String letter) {
    return new SignedReport.Papers(policy, bytes(letter), bytes("a page"), "a comment");
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static SignedReport with(SignedReport report, SignedReport.Content content) {
    return new SignedReport(
        report.caseId(),
        report.number(),
        report.caseVersion(),
        report.at(),
        report.account(),
        report.reason(),
        content,
        report.hash());
  }

  private static SignedReport signed(Reports.Signing signing) {
    return ((Reports.Signing.Signed) signing).report();
  }
}
