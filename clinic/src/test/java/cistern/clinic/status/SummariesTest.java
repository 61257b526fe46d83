package cistern.clinic.status;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Chance;
import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Clinic;
import cistern.clinic.cases.Held;
import cistern.clinic.cases.SignedReport.Content;
import cistern.clinic.gel.Gels;
import cistern.clinic.setting.Setting;
import cistern.clinic.store.Location;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What lists show, kept in the store and made again when it is old. */
class SummariesTest {

  private static final Duration LONG = Duration.ofMinutes(1);
  private static final Duration SHORT = Duration.ofMillis(50);
  private static final String RESULTS =
      ",\"results\":[{\"analyte\":\"lactate\",\"in\":\"csf\",\"value\":220,\"unit\":\"umol/L\"}]}";

  private final Held clock = new Held(Clinic.THEN);

  private Summaries summaries(Clinic clinic, String software) {
    return Summaries.of(
        clinic.store(),
        new Medicine(
            new RulesInForce(ReportFacts.of(GelFacts.standard()), ""),
            software,
            clock,
            ZoneOffset.UTC,
            Gels.of(clinic.store(), clinic.trail(), clock, Chance.of(new Random(5)))));
  }

  private static CaseVersion add(Clinic clinic, String who, String workup) {
    return clinic.cases().add("begun", workup, who);
  }

  private static String named(String name, String rest) {
    return "{\"workup\":1,\"id\":\"" + name + "\"" + rest;
  }

  private void with(Location location, Consumer<Clinic> work) {
    try (Clinic clinic = Clinic.open(location, clock, 7)) {
      work.accept(clinic);
    } finally {
      clock.release();
    }
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void page_andSearch_areInTheOrderOfChangeAndEscaped(Location location) {
    with(
        location,
        clinic -> {
          String who = clinic.person(Role.CLINICIAN).id();
          add(clinic, who, named("One_two", ",\"person\":{\"id\":\"p-7\"}}"));
          clock.pass(Duration.ofMinutes(1));
          add(clinic, who, named("other", ",\"question\":\"Is it ÄHNLICH?\"}"));
          try (Summaries summaries = summaries(clinic, "a test")) {
            assertThat(summaries.bring(LONG)).isZero();

            assertThat(summaries.page(0, 5))
                .extracting(Summary::name)
                .containsExactly("other", "One_two");
            assertThat(summaries.page(1, 5)).extracting(Summary::name).containsExactly("One_two");
            assertThat(summaries.holding("ONE_T", 0, 5)).hasSize(1);
            assertThat(summaries.holding("onext", 0, 5)).isEmpty();
            assertThat(summaries.holding("%", 0, 5)).isEmpty();
            assertThat(summaries.holding("ähnlich", 0, 5))
                .extracting(Summary::name)
                .containsExactly("other");
            assertThat(summaries.holding("P-7", 0, 5)).hasSize(1);
            assertThat(summaries.ofPerson("p-7")).hasSize(1);
          }
        });
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void duty_toSign_waitsUntilItIsSigned(Location location) {
    with(
        location,
        clinic -> {
          String who = clinic.person(Role.CLINICIAN).id();
          CaseVersion version = add(clinic, who, named("to-sign", RESULTS));
          try (Summaries summaries = summaries(clinic, "a test")) {
            summaries.bring(LONG);
            assertThat(summaries.waiting()).containsEntry(Duty.SIGN, 1L);
            assertThat(summaries.waiting(Duty.SIGN, 9))
                .extracting(Summary::name)
                .containsExactly("to-sign");

            Content content = new Content("x", "{}", "page", new byte[] {1}, Optional.empty());
            clinic.reports().sign(version, content, "", who);
            summaries.bring(LONG);

            assertThat(summaries.waiting()).doesNotContainKey(Duty.SIGN);
            assertThat(summaries.page(0, 1).getFirst().signing()).isEqualTo("signed");
            clinic
                .cases()
                .save(version.caseId(), new Change(1, "x", named("changed", RESULTS), who));
            summaries.bring(LONG);
            assertThat(summaries.waiting()).containsEntry(Duty.SIGN, 1L);
            assertThat(summaries.page(0, 1).getFirst().name()).isEqualTo("changed");
          }
        });
  }

  /** The call is due one day after the puncture: the setting clinic.call.hours. */
  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void duty_ofATime_comesWhenTheTimeHasCome(Location location) {
    with(
        location,
        clinic -> {
          String who = clinic.person(Role.CLINICIAN).id();
          add(clinic, who, named("call", ",\"draws\":{\"csf\":{\"at\":\"" + Clinic.THEN + "\"}}}"));
          try (Summaries summaries = summaries(clinic, "a test")) {
            summaries.bring(LONG);
            assertThat(summaries.waiting()).doesNotContainKey(Duty.HEADACHE_CALL);
            clock.pass(Duration.ofHours(Setting.CALL_HOURS.number()));

            summaries.bring(LONG);

            assertThat(summaries.waiting()).containsEntry(Duty.HEADACHE_CALL, 1L);
          }
        });
  }

  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void summaries_afterAStart_areThereAtOnceAndMadeAgainUnderOtherFacts(Location location) {
    with(
        location,
        clinic -> {
          String who = clinic.person(Role.CLINICIAN).id();
          add(clinic, who, named("kept", "}"));
          try (Summaries first = summaries(clinic, "a test")) {
            first.bring(LONG);
          }
          clock.hold();
          try (Summaries second = summaries(clinic, "another program")) {
            assertThat(second.bring(SHORT)).isZero();
            assertThat(second.page(0, 5)).extracting(Summary::name).containsExactly("kept");
            add(clinic, who, named("new", "}"));
            assertThat(second.bring(SHORT)).isEqualTo(1);
            clock.release();
            assertThat(second.bring(LONG)).isZero();
          }
        });
  }

  /** A fault of the program with one case stays in that case's row. */
  @ParameterizedTest
  @MethodSource("cistern.clinic.store.Engines#both")
  void summary_ofACaseThatCannotBeRead_staysInItsRow(Location location) {
    with(
        location,
        clinic -> {
          String who = clinic.person(Role.CLINICIAN).id();
          List.of("1e306", "220")
              .forEach(v -> add(clinic, who, named("v", RESULTS.replace("220", v))));
          add(
              clinic,
              who,
              named("t", ",\"draws\":{\"csf\":{\"at\":\"+999999999-12-31T00:00:00Z\"}}}"));
          add(
              clinic,
              who,
              named("b", ",\"bands\":{\"csfOnly\":2000000000,\"shared\":2000000000}}"));
          try (Summaries summaries = summaries(clinic, "a test")) {
            assertThat(summaries.bring(LONG)).isZero();

            assertThat(summaries.page(0, 9)).hasSize(4);
            assertThat(summaries.page(0, 9).stream().filter(s -> s.name().equals("v"))).hasSize(1);
            assertThat(
                    summaries.page(0, 9).stream()
                        .filter(s -> s.signing().contains("cannot be read")))
                .hasSize(3);
          }
        });
  }
}
