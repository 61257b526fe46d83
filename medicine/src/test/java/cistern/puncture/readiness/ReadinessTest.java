package cistern.puncture.readiness;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.checks.OutsideCheck;
import cistern.fact.Facts;
import cistern.measurement.Answer;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.readiness.TriggerAnswer.Trigger;
import cistern.puncture.readiness.TriggerAnswer.Verdict;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadinessTest {

  private static final Readiness READINESS = Readiness.of(Facts.standard());

  private static Precaution find(Given given, String code) {
    return READINESS.check(given.before()).stream()
        .filter(p -> p.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static Optional<Precaution> arrangement(
      Given given, PuncturedPerson subject, String code) {
    return READINESS.arrangements(given.before(), subject).stream()
        .filter(p -> p.code().equals(code))
        .findFirst();
  }

  private static Verdict verdict(Given given, Trigger trigger, String guideline) {
    return READINESS.triggers(given.before()).stream()
        .filter(t -> t.trigger() == trigger && t.guideline().code().equals(guideline))
        .findFirst()
        .orElseThrow()
        .verdict();
  }

  /** PMC7286381 table 3 (IDSA 2004, ESCMID 2016); UK joint guideline 2016, box 1. */
  @Nested
  class Published {

    private static final String SCORES =
        """
        15, NOT_TRIGGERED, NOT_TRIGGERED, NOT_TRIGGERED
        14, IMAGE_FIRST, NOT_TRIGGERED, NOT_TRIGGERED
        13, IMAGE_FIRST, NOT_TRIGGERED, NOT_TRIGGERED
        12, IMAGE_FIRST, NOT_TRIGGERED, IMAGE_FIRST
        10, IMAGE_FIRST, NOT_TRIGGERED, IMAGE_FIRST
        9, IMAGE_FIRST, IMAGE_FIRST, IMAGE_FIRST
        """;

    @ParameterizedTest
    @CsvSource(textBlock = SCORES)
    void triggers_consciousness_differByGuideline(
        int score, Verdict idsa, Verdict escmid, Verdict uk) {
      Given given = Given.nothing().coma(score);

      assertThat(verdict(given, Trigger.CONSCIOUSNESS, "idsa-2004")).isEqualTo(idsa);
      assertThat(verdict(given, Trigger.CONSCIOUSNESS, "escmid-2016")).isEqualTo(escmid);
      assertThat(verdict(given, Trigger.CONSCIOUSNESS, "uk-joint-2016")).isEqualTo(uk);
    }

    @Test
    void triggers_ofEveryGuideline_areWrittenIntoTheTable() {
      assertThat(SCORES.lines().count()).isEqualTo(6);
      OutsideCheck.of(
              "Signs that ask for imaging first, by guideline",
              "PMC7286381 table 3; UK joint meningitis guideline 2016, box 1",
              "equal verdicts")
          .toTable("18 scores and 12 signs agree");
    }

    @ParameterizedTest
    @CsvSource({
      "NEW_SEIZURE, SEIZURE, IMAGE_FIRST, IMAGE_FIRST, NOT_TRIGGERED",
      "CONTINUOUS_SEIZURES, SEIZURE, NOT_TRIGGERED, NOT_TRIGGERED, IMAGE_FIRST",
      "FOCAL_SIGNS, FOCAL_SIGNS, IMAGE_FIRST, IMAGE_FIRST, IMAGE_FIRST",
      "PAPILLOEDEMA, PAPILLOEDEMA, IMAGE_FIRST, NOT_LISTED, IMAGE_FIRST",
      "IMMUNOCOMPROMISED, IMMUNOCOMPROMISE, IMAGE_FIRST, IMAGE_FIRST, NOT_LISTED",
      "EARLIER_CNS_DISEASE, IMMUNOCOMPROMISE, IMAGE_FIRST, NOT_TRIGGERED, NOT_LISTED"
    })
    void triggers_signs_differByGuideline(
        Question sign, Trigger trigger, Verdict idsa, Verdict escmid, Verdict uk) {
      Given given = Given.allNo().yes(sign);

      assertThat(verdict(given, trigger, "idsa-2004")).isEqualTo(idsa);
      assertThat(verdict(given, trigger, "escmid-2016")).isEqualTo(escmid);
      assertThat(verdict(given, trigger, "uk-joint-2016")).isEqualTo(uk);
    }
  }

  @Test
  void check_nothingKnown_leavesEverythingOpen() {
    assertThat(READINESS.check(Given.nothing().before()))
        .extracting(Precaution::state)
        .containsOnly(Precaution.State.OPEN);
  }

  @Test
  void check_everythingAnswered_isCheckedAndNeverCalledSafe() {
    Given given = Given.allNo().yes(Question.MRI_REVIEWED).coma(15);

    assertThat(READINESS.check(given.before()))
        .allSatisfy(
            p -> {
              assertThat(p.state()).isEqualTo(Precaution.State.CHECKED);
              assertThat(p.text().toLowerCase(java.util.Locale.ROOT)).doesNotContain("safe");
            });
  }

  @ParameterizedTest
  @CsvSource({
    "MASS_EFFECT, mass-or-raised-pressure",
    "HYDROCEPHALUS, mass-or-raised-pressure",
    "TONSILLAR_DESCENT, mass-or-raised-pressure",
    "POSTERIOR_FOSSA_LESION, mass-or-raised-pressure",
    "CHANGED_SINCE_SCAN, imaging-changed",
    "SITE_INFECTION, site-infection",
    "SPINAL_BLOCK, spinal-block",
    "CARDIORESPIRATORY, cardiorespiratory",
    "LUMBAR_FUSION, spine-at-site",
    "LAMINECTOMY, spine-at-site",
    "SPINE_ANOMALY, spine-at-site",
    "DYSRAPHISM, dysraphism",
    "BLEEDING_DISORDER, bleeding-disorder",
    "PAPILLOEDEMA, papilloedema"
  })
  void check_anyYes_isPresent(Question question, String code) {
    assertThat(find(Given.nothing().yes(question), code).state())
        .isEqualTo(Precaution.State.PRESENT);
    assertThat(find(Given.allNo().coma(15), code).state()).isEqualTo(Precaution.State.CHECKED);
    assertThat(find(Given.allNo().coma(15).with(question, Answer.UNKNOWN), code).state())
        .isEqualTo(Precaution.State.OPEN);
  }

  @Test
  void check_mriReviewed_showsTheDateOfTheScan() {
    OffsetDateTime at = OffsetDateTime.parse("2031-02-20T08:00:00Z");

    assertThat(
            find(Given.nothing().yes(Question.MRI_REVIEWED).imagedAt(at), "imaging-not-reviewed")
                .text())
        .contains("2031-02-20");
    assertThat(find(Given.nothing().yes(Question.MRI_REVIEWED), "imaging-not-reviewed").text())
        .contains("not recorded");
    assertThat(find(Given.allNo(), "imaging-not-reviewed").state())
        .isEqualTo(Precaution.State.PRESENT);
  }

  @Test
  void arrangements_ofTheVisit_areAskedFor() {
    PuncturedPerson woman = Given.subject(30, "female");
    for (String code : List.of("allergy", "serum-not-planned", "consent", "declined")) {
      assertThat(arrangement(Given.nothing(), woman, code).orElseThrow().state())
          .isEqualTo(Precaution.State.OPEN);
    }
    assertThat(arrangement(Given.allNo(), woman, "serum-not-planned").orElseThrow().text())
        .contains("missing");
    assertThat(
            arrangement(Given.nothing().yes(Question.CONSENT), woman, "consent")
                .orElseThrow()
                .state())
        .isEqualTo(Precaution.State.CHECKED);
    assertThat(
            arrangement(Given.nothing().yes(Question.LATEX), woman, "allergy").orElseThrow().text())
        .contains("latex", "lidocaine");
  }

  @ParameterizedTest
  @CsvSource({
    "female, YES, PRESENT",
    "female, UNKNOWN, OPEN",
    "female, NO, CHECKED",
    "male, YES, PRESENT",
    "male, UNKNOWN,"
  })
  void arrangements_pregnancy_isAskedUnlessMale(
      String sex, Answer pregnancy, Precaution.State state) {
    PuncturedPerson subject =
        new PuncturedPerson(
            OptionalDouble.of(30),
            Optional.of(sex),
            pregnancy,
            Answer.UNKNOWN,
            PuncturedPerson.Draw.UNKNOWN);

    assertThat(arrangement(Given.nothing(), subject, "pregnancy").map(Precaution::state))
        .isEqualTo(Optional.ofNullable(state));
  }
}
