package cistern.clinic.status;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.clinic.account.Chance;
import cistern.clinic.account.Role;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Clinic;
import cistern.clinic.gel.Gels;
import cistern.clinic.store.Engines;
import cistern.gel.GelFacts;
import cistern.report.look.ReportFacts;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** What waits in a case, at 8:00 on 9 May 2034. */
@TestInstance(Lifecycle.PER_CLASS)
class CaseStatusTest {

  private static final Clock NOW = Clock.fixed(Clinic.THEN, ZoneOffset.UTC);

  private final Clinic clinic = Clinic.open(Engines.folder());
  private final String who = clinic.person(Role.CLINICIAN).id();
  private final Medicine medicine =
      new Medicine(
          new RulesInForce(ReportFacts.of(GelFacts.standard()), ""),
          "a test",
          NOW,
          ZoneOffset.UTC,
          Gels.of(clinic.store(), clinic.trail(), NOW, Chance.of(new Random(5))));

  @AfterAll
  void close() {
    clinic.close();
  }

  /** Drawn an hour ago; each test was sent then and is due at a time of that month. */
  private Set<Duty> duties(String sent) {
    String workup =
        "{\"workup\":1,\"id\":\"x\",\"draws\":{\"csf\":{\"at\":\"2034-05-09T07:00:00Z\"},"
            + "\"serum\":{\"at\":\"2034-05-09T07:00:00Z\"}},\"results\":[],"
            + "\"procedure\":{\"after\":{\"sent\":["
            + sent
            + "]}}}";
    CaseVersion version = clinic.cases().add("begun", workup, who);
    return CaseStatus.of(OpenCase.of(version, medicine), medicine, OptionalLong.empty()).duties();
  }

  private CaseStatus standing(String workup, OptionalLong signed) {
    CaseVersion version =
        clinic.cases().add("begun", "{\"workup\":1,\"id\":\"x\"," + workup + "}", who);
    return CaseStatus.of(OpenCase.of(version, medicine), medicine, signed);
  }

  private Set<Duty> waits(String workup) {
    return standing(workup, OptionalLong.empty()).duties();
  }

  @Test
  void duties_ofAPuncture_followWhatIsPlannedDrawnAndAsked() {
    String planned = "\"procedure\":{\"before\":{\"plannedAt\":\"2034-05-10T09:00:00Z\"}}";
    String drawn = "\"draws\":{\"csf\":{\"at\":\"2034-05-0%dT07:00:00Z\"}},\"results\":[]";
    String asked = ",\"procedure\":{\"after\":{\"headache\":{\"present\":\"no\"}}}";

    assertThat(waits("\"results\":[]")).isEmpty();
    assertThat(waits(planned)).containsExactly(Duty.PUNCTURE);
    assertThat(waits(drawn.formatted(9) + "," + planned))
        .containsExactlyInAnyOrder(Duty.SERUM, Duty.DUE);
    assertThat(waits(drawn.formatted(8)))
        .containsExactlyInAnyOrder(Duty.SERUM, Duty.DUE, Duty.HEADACHE_CALL);
    assertThat(waits(drawn.formatted(8) + asked)).doesNotContain(Duty.HEADACHE_CALL);
    assertThat(waits(drawn.formatted(8).replace("05-08", "04-08")))
        .doesNotContain(Duty.HEADACHE_CALL);
  }

  @Test
  void duties_ofResults_areToSignUntilTheyAreSignedAsTheyStand() {
    String pair =
        "\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":2,\"unit\":\"g/L\"},"
            + "{\"analyte\":\"albumin\",\"in\":\"serum\",\"value\":44,\"unit\":\"g/L\"}]";

    assertThat(waits(pair)).containsExactly(Duty.SIGN);
    assertThat(standing(pair, OptionalLong.of(1)).duties()).isEmpty();
    assertThat(standing(pair, OptionalLong.of(1)).signing()).isEqualTo("signed");
  }

  @Test
  void missing_ofACase_namesEachThingThatIs() {
    String alone =
        "\"results\":[{\"analyte\":\"albumin\",\"in\":\"csf\",\"value\":2,\"unit\":\"g/L\"}],"
            + "\"draws\":{\"csf\":{\"at\":\"2034-05-09T07:00:00Z\"}}";
    String whole =
        "\"question\":\"MS?\",\"person\":{\"ageYears\":31},\"results\":[],"
            + "\"bands\":{\"csfOnly\":1}";

    assertThat(standing(alone, OptionalLong.empty()).missing())
        .anyMatch(m -> m.startsWith("The age"))
        .anyMatch(m -> m.startsWith("The question"))
        .anyMatch(m -> m.startsWith("The time of the serum"))
        .anyMatch(m -> m.contains("serum") && !m.startsWith("The time"))
        .contains("The bands.");
    assertThat(standing(whole, OptionalLong.empty()).missing()).isEmpty();
  }

  private static String sent(String test, String due) {
    return "{\"test\":\"%s\",\"sentAt\":\"2034-05-09T07:05:00Z\",\"dueAt\":\"2034-05-%sZ\"}"
        .formatted(test, due);
  }

  @Test
  void duties_ofADrawWithoutResults_areThatTheyAreDue() {
    assertThat(duties("")).containsExactly(Duty.DUE);
    assertThat(duties(sent("cells", "10T08:00:00"))).containsExactly(Duty.DUE);
  }

  @Test
  void duties_withOneResultOverdue_areNotThatTheOthersAreDueToo() {
    assertThat(duties(sent("cells", "09T07:30:00"))).containsExactly(Duty.OVERDUE);
    assertThat(duties(sent("cells", "09T07:30:00") + "," + sent("chemistry", "10T08:00:00")))
        .containsExactly(Duty.OVERDUE);
  }
}
