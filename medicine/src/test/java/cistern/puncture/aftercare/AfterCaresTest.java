package cistern.puncture.aftercare;

import static cistern.puncture.procedure.WarningSign.DOUBLE_VISION;
import static cistern.puncture.procedure.WarningSign.DROWSINESS;
import static cistern.puncture.procedure.WarningSign.FEVER;
import static cistern.puncture.procedure.WarningSign.NO_LONGER_POSTURAL;
import static cistern.puncture.procedure.WarningSign.SADDLE_NUMBNESS;
import static cistern.puncture.procedure.WarningSign.SEIZURE;
import static cistern.puncture.procedure.WarningSign.SEVERE_BACK_PAIN;
import static cistern.puncture.procedure.WarningSign.VISUAL_LOSS;
import static cistern.puncture.procedure.WarningSign.WORSENING;
import static org.assertj.core.api.Assertions.assertThat;

import cistern.bedside.Bedside;
import cistern.bedside.RuleReply;
import cistern.bedside.Sign;
import cistern.fact.Facts;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.puncture.PuncturePlans;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.HeadacheRecord;
import cistern.puncture.procedure.HeadacheRecord.BloodPressure;
import cistern.puncture.procedure.Needle;
import cistern.puncture.procedure.Position;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.ProcedureAnswers;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import cistern.urgent.Urgent;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class AfterCaresTest {

  private static final OffsetDateTime PUNCTURE = OffsetDateTime.parse("2031-03-02T10:00:00Z");
  private static final PuncturePlans PLANS = PuncturePlans.of(Facts.standard());

  private final Map<WarningSign, Answer> signs = new EnumMap<>(WarningSign.class);
  private final Map<Question, Answer> answers = new EnumMap<>(Question.class);
  private final List<HeadacheRecord.Day> days = new ArrayList<>();
  private Answer present = Answer.YES;
  private Optional<OffsetDateTime> onset = Optional.of(PUNCTURE.plusHours(20));
  private OffsetDateTime asOf = PUNCTURE.plusHours(60);
  private BloodPressure pressure = BloodPressure.UNKNOWN;
  private Given before = Given.allNo().yes(Question.CONSENT).taking().coagulation(blood(200));
  private PuncturedPerson person = Given.subject(34, "female");
  private OptionalDouble opening = OptionalDouble.empty();
  private Bedside bedside = Bedside.UNKNOWN;
  private Urgent fluid = Urgent.NONE;

  private static Coagulation blood(double platelets) {
    return new Coagulation(
        OptionalDouble.of(platelets),
        OptionalDouble.of(1),
        OptionalDouble.empty(),
        Optional.empty());
  }

  private AfterCaresTest allNo() {
    for (WarningSign sign : WarningSign.values()) {
      signs.put(sign, Answer.NO);
    }
    answers.put(Question.WORSE_UPRIGHT, Answer.YES);
    answers.put(Question.BETTER_LYING, Answer.YES);
    answers.put(Question.BETTER_EXPLANATION, Answer.NO);
    answers.put(Question.PATCH_CONSENT, Answer.YES);
    for (Question question :
        List.of(
            Question.BACTERAEMIA,
            Question.INFLAMMATION,
            Question.BLOOD_CANCER,
            Question.HIV_WITH_INFECTION)) {
      answers.put(question, Answer.NO);
    }
    opening = OptionalDouble.of(14);
    return this;
  }

  private AfterCaresTest yes(WarningSign... which) {
    for (WarningSign sign : which) {
      signs.put(sign, Answer.YES);
    }
    return this;
  }

  private AfterCaresTest severity(int day, double severity) {
    days.add(new HeadacheRecord.Day(day, severity));
    return this;
  }

  private AfterCare care() {
    HeadacheRecord headache =
        new HeadacheRecord(
            present, new ProcedureAnswers(answers), signs, onset, Optional.empty(), days, pressure);
    Done done =
        new Done(
            ProcedureAnswers.NONE,
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            Position.LATERAL,
            opening,
            Needle.UNKNOWN,
            List.of());
    PuncturedPerson drawn =
        new PuncturedPerson(
            person.ageYears(),
            person.sex(),
            person.pregnancy(),
            person.headacheDisorder(),
            new PuncturedPerson.Draw(
                Optional.of(PUNCTURE), OptionalDouble.empty(), Optional.empty(), Optional.empty()),
            person.kidney(),
            new PuncturedPerson.Beside(bedside, fluid));
    return PLANS.afterCare(
        new Procedure(
            before.before(),
            done,
            new After(Optional.of(asOf), Optional.of(headache), List.of(), Optional.empty())),
        drawn);
  }

  private List<String> holding() {
    return care().holding().stream().map(Urgency::code).toList();
  }

  private List<String> held() {
    return care().patch().because().stream().map(AfterCare.Reason::code).toList();
  }

  @Nested
  class Emergencies {

    @ParameterizedTest
    @CsvSource({
      "LEG_WEAKNESS, spinal-emergency",
      "SADDLE_NUMBNESS, spinal-emergency",
      "BLADDER_OR_BOWEL, spinal-emergency",
      "SEIZURE, new-deficit",
      "REDUCED_CONSCIOUSNESS, new-deficit",
      "DROWSINESS, new-deficit",
      "FOCAL_DEFICIT, new-deficit",
      "VISUAL_LOSS, new-deficit",
      "THUNDERCLAP, new-deficit",
      "NOT_EASING_LYING, headache-changed",
      "WORSENING, headache-changed",
      "LONG_LASTING, headache-changed",
      "DOUBLE_VISION, cranial-nerve",
      "HEARING_LOSS, cranial-nerve",
      "FACIAL_PALSY, cranial-nerve",
      "LEAK, leak-or-pus",
      "PUS, leak-or-pus",
      "ROOT_PAIN, root-pain",
      "SEVERE_BACK_PAIN, root-pain"
    })
    void check_oneYes_holdsItsRule(WarningSign sign, String code) {
      allNo().yes(sign);

      assertThat(holding()).containsExactly(code);
    }

    /** A headache with fever at any hour; fever alone without a headache is no rule. */
    @ParameterizedTest
    @CsvSource({"YES, true", "NO, false"})
    void check_fever_isMeningitisBesideAHeadache(Answer headache, boolean holds) {
      allNo().yes(FEVER);
      present = headache;
      onset = Optional.empty();

      assertThat(holding().contains("fever-after-puncture")).isEqualTo(holds);
    }

    @ParameterizedTest
    @EnumSource(
        value = WarningSign.class,
        names = {"NECK_STIFFNESS", "DROWSINESS", "RASH", "REDUCED_CONSCIOUSNESS"})
    void check_feverWithASign_isMeningitisWithoutAHeadache(WarningSign sign) {
      allNo().yes(FEVER, sign);
      present = Answer.NO;

      assertThat(holding().getFirst()).isEqualTo("fever-after-puncture");
    }

    @ParameterizedTest
    @CsvSource({"YES, false", "NO, true", "UNKNOWN, true"})
    void check_drowsiness_speaksForTheBrainUnlessThereIsFever(Answer fever, boolean isBrain) {
      allNo().yes(DROWSINESS);
      signs.put(FEVER, fever);

      assertThat(holding().contains("new-deficit")).isEqualTo(isBrain);
    }

    @Test
    void check_drowsyNineDaysAfterOnAnAnticoagulant_hearsOfTheBrain() {
      allNo().yes(DROWSINESS);
      asOf = PUNCTURE.plusDays(9);
      before = before.taking(Given.drug("Marcumar", DoseClass.UNKNOWN));

      assertThat(care().urgent().getFirst().code()).isEqualTo("new-deficit");
      assertThat(care().urgent().getFirst().tier()).isEqualTo(Tier.T0);
    }

    /** Platelets under 100 with severe back pain (project rule). */
    @ParameterizedTest
    @CsvSource({"99, true", "100, false"})
    void check_severeBackPainWithFewPlatelets_isASpinalEmergency(double platelets, boolean holds) {
      allNo().yes(SEVERE_BACK_PAIN);
      before = before.coagulation(blood(platelets));

      assertThat(holding().contains("spinal-emergency")).isEqualTo(holds);
    }

    @Test
    void check_severeBackPainOnAnAntithromboticOrWithFever_isASpinalEmergency() {
      allNo().yes(SEVERE_BACK_PAIN, FEVER);
      assertThat(holding()).contains("spinal-emergency", "fever-after-puncture");
      signs.put(FEVER, Answer.NO);
      before = before.taking(Given.drug("ASS 100", DoseClass.UNKNOWN));
      assertThat(holding()).containsExactly("spinal-emergency");
    }

    @Test
    void check_severeBackPainWithAnUnknownDrug_isUnknownAndNamed() {
      allNo().yes(SEVERE_BACK_PAIN);
      before = before.taking(Given.drug("Foobarin", DoseClass.UNKNOWN));

      assertThat(care().urgent())
          .filteredOn(u -> u.state() == Urgency.State.UNKNOWN)
          .extracting(Urgency::code)
          .contains("spinal-emergency");
    }

    @ParameterizedTest
    @CsvSource({"139, 89, false", "140, 89, true", "139, 90, true"})
    void check_visualLossWithPressure_isPresOrEclampsia(
        double systolic, double diastolic, boolean holds) {
      allNo().yes(VISUAL_LOSS);
      pressure = new BloodPressure(OptionalDouble.of(systolic), OptionalDouble.of(diastolic));

      assertThat(holding().contains("pressure-and-pregnancy")).isEqualTo(holds);
    }

    @Test
    void check_seizureAfterBirth_isPresOrEclampsia() {
      allNo().yes(SEIZURE);
      answers.put(Question.POST_PARTUM, Answer.YES);

      assertThat(holding()).containsExactly("new-deficit", "pressure-and-pregnancy");
    }
  }

  @Nested
  class ChangedHeadache {

    /** PMID 9399009: 45 % had a headache that was not postural at times, so once is no flag. */
    @Test
    void check_day3NotPosturalOnceButEasedLying_isNotChanged() {
      allNo().yes(NO_LONGER_POSTURAL);
      answers.put(Question.BETTER_LYING, Answer.YES);
      asOf = PUNCTURE.plusDays(3);

      assertThat(holding()).doesNotContain("headache-changed");
      answers.put(Question.BETTER_LYING, Answer.NO);
      assertThat(holding()).contains("headache-changed");
    }

    @ParameterizedTest
    @CsvSource({"5.4, false, true", "6, true, true", "7, true, true", "5, false, false"})
    void check_firstHeadache_isImagedFromTheSixthDay(double day, boolean holds, boolean isUnclear) {
      allNo();
      onset = Optional.of(PUNCTURE.plus(Duration.ofMinutes(Math.round(day * 1440))));
      asOf = PUNCTURE.plusDays(8);

      assertThat(holding().contains("headache-changed")).isEqualTo(holds);
      assertThat(held().contains("diagnosis-unclear")).isEqualTo(isUnclear);
    }

    @Test
    void check_firstHeadacheOnDay7ToldByDays_isChangedAndUnclear() {
      allNo().severity(7, 5);
      onset = Optional.empty();
      asOf = PUNCTURE.plusDays(7);

      assertThat(holding()).contains("headache-changed");
      assertThat(held()).contains("diagnosis-unclear");
    }

    @ParameterizedTest
    @CsvSource({"14, false", "14.1, true"})
    void check_longerThanTwoWeeks_isChanged(double days, boolean holds) {
      allNo();
      asOf = onset.orElseThrow().plus(Duration.ofMinutes(Math.round(days * 1440)));

      assertThat(holding().contains("headache-changed")).isEqualTo(holds);
    }

    @ParameterizedTest
    @CsvSource({"59, false", "60, true"})
    void check_changeNotAskedAtSixty_isAskedToday(double age, boolean holds) {
      allNo();
      signs.remove(WORSENING);
      person = Given.subject(age, "male");

      assertThat(holding().contains("ask-about-change")).isEqualTo(holds);
    }

    @Test
    void check_changeNotAskedWithCancer_isAskedToday() {
      allNo();
      signs.remove(WORSENING);
      bedside = Bedside.UNKNOWN.with(Map.of(Sign.CANCER_HISTORY, Answer.YES), List.of());

      assertThat(holding()).containsExactly("ask-about-change");
    }
  }

  @Nested
  class SevereHeadache {

    /** Severity from 7, or from 4 beyond 48 h (project rule). */
    @ParameterizedTest
    @CsvSource({"6.9, 40, false", "7, 40, true", "4, 48, false", "4, 49, true", "3.9, 49, false"})
    void check_severity_isSevere(double severity, int hours, boolean holds) {
      allNo().severity(1, severity);
      asOf = onset.orElseThrow().plusHours(hours);

      assertThat(holding().contains("severe-headache")).isEqualTo(holds);
    }

    @Test
    void check_severeBesideARedFlag_isLeftToTheFlag() {
      allNo().yes(DOUBLE_VISION).severity(1, 9);

      assertThat(holding()).containsExactly("cranial-nerve");
    }

    @Test
    void check_severeThenBetter_countsTheLastDay() {
      allNo().severity(1, 9).severity(2, 2);

      assertThat(holding()).isEmpty();
    }
  }

  @Nested
  class Patch {

    @Test
    void check_everythingAnswered_isShown() {
      allNo().severity(2, 8);

      assertThat(held()).isEmpty();
      assertThat(care().patch().open()).isEmpty();
      assertThat(care().ladder()).extracting(AfterCare.LadderStep::code).contains("patch");
    }

    @ParameterizedTest
    @EnumSource(
        value = WarningSign.class,
        names = {"DROWSINESS", "WORSENING", "DOUBLE_VISION", "LEAK", "ROOT_PAIN"})
    void check_aRedFlag_holdsItAndSilencesWhatSoothes(WarningSign sign) {
      allNo().yes(sign).severity(2, 8);

      assertThat(held()).contains("emergency-open");
      assertThat(care().ladder()).isEmpty();
    }

    @Test
    void check_aRedFlagAnswered_isShownAgain() {
      allNo().yes(DOUBLE_VISION);
      bedside =
          new Bedside(
              Map.of(),
              Bedside.Attack.UNKNOWN,
              List.of(),
              List.of(),
              List.of(
                  new RuleReply("cranial-nerve", "Dr Example", Optional.of(asOf), "MRI normal")));

      assertThat(care().holding().getFirst().answered()).isPresent();
      assertThat(held()).isEmpty();
    }

    @Test
    void check_anInfectionOpenInTheFluid_holdsIt() {
      allNo().severity(2, 8);
      fluid =
          new Urgent(
              List.of(
                  new Urgency(
                      "tuberculous-pattern",
                      Tier.T1,
                      Urgency.State.HOLDS,
                      true,
                      new Urgency.Words("Tuberculous pattern.", "Call.", List.of()),
                      List.of(),
                      Optional.empty(),
                      Grounds.MEASURED)));

      assertThat(held()).containsExactly("infection-open");
      assertThat(care().ladder()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
      "BACTERAEMIA, infection-open",
      "INFLAMMATION, infection-open",
      "BLOOD_CANCER, blood-disease",
      "HIV_WITH_INFECTION, blood-disease",
      "SUBDURAL_WITH_SHIFT, mass-or-pressure",
      "BETTER_EXPLANATION, diagnosis-unclear"
    })
    void check_whatIsAskedAfterwards_holdsIt(Question question, String code) {
      allNo();
      answers.put(question, Answer.YES);

      assertThat(held()).containsExactly(code);
    }

    @ParameterizedTest
    @CsvSource({
      "SITE_INFECTION, site-infection",
      "MASS_EFFECT, mass-or-pressure",
      "HYDROCEPHALUS, mass-or-pressure",
      "SPINAL_BLOCK, spine",
      "DYSRAPHISM, spine",
      "LUMBAR_FUSION, spine"
    })
    void check_whatWasKnownBefore_holdsIt(Question question, String code) {
      allNo();
      before = before.yes(question);

      assertThat(held()).containsExactly(code);
    }

    @ParameterizedTest
    @CsvSource({"24.9, false", "25, true"})
    void check_openingPressure_holdsItFrom25(double cmWater, boolean holds) {
      allNo();
      opening = OptionalDouble.of(cmWater);

      assertThat(held().contains("mass-or-pressure")).isEqualTo(holds);
    }

    @ParameterizedTest
    @CsvSource({"1439, true", "1440, false"})
    void check_under24Hours_holdsIt(int minutes, boolean holds) {
      allNo();
      onset = Optional.of(PUNCTURE.plusHours(2));
      asOf = PUNCTURE.plusMinutes(minutes);

      assertThat(held().contains("too-early")).isEqualTo(holds);
    }

    @Test
    void check_anIntervalNotPassedToday_holdsIt() {
      allNo();
      before = before.taking(Given.drug("Marcumar", DoseClass.UNKNOWN));

      assertThat(held()).contains("clotting-or-interval");
    }

    @Test
    void check_neverPostural_isUnclear() {
      allNo();
      answers.put(Question.WORSE_UPRIGHT, Answer.NO);
      answers.put(Question.BETTER_LYING, Answer.NO);

      assertThat(held()).containsExactly("diagnosis-unclear");
    }

    @Test
    void check_noConsent_holdsIt() {
      allNo();
      answers.put(Question.PATCH_CONSENT, Answer.NO);

      assertThat(held()).containsExactly("no-consent");
    }

    @Test
    void check_unknown_staysOpenAndIsNoNo() {
      allNo();
      answers.remove(Question.BACTERAEMIA);
      answers.remove(Question.PATCH_CONSENT);
      opening = OptionalDouble.empty();

      assertThat(held()).isEmpty();
      assertThat(care().patch().open()).hasSize(3);
    }

    @Test
    void check_anEmergencyNotAsked_holdsIt() {
      allNo();
      signs.remove(SEIZURE);

      assertThat(held()).containsExactly("emergency-open");
    }
  }

  @Test
  void check_calls_standOnTheirDays() {
    assertThat(care().calls())
        .extracting(AfterCare.FollowUpCall::fromDay)
        .containsExactly(1.0, 5.0, 28.0);
    assertThat(care().calls().getFirst().from()).contains(PUNCTURE.plusDays(1));
  }

  @Test
  void check_noReport_saysNothingUrgent() {
    assertThat(PLANS.afterCare(Procedure.UNKNOWN, PuncturedPerson.UNKNOWN).urgent()).isEmpty();
  }

  @Test
  void check_severalYes_areOrderedByTier() {
    allNo().yes(DOUBLE_VISION, SADDLE_NUMBNESS, SEIZURE);

    assertThat(holding()).containsExactly("spinal-emergency", "new-deficit", "cranial-nerve");
  }

  @Test
  void check_oneEmergency_namesTheOthersThatAreOpen() {
    yes(SEIZURE);

    assertThat(care().urgent())
        .filteredOn(u -> u.state() == Urgency.State.UNKNOWN)
        .extracting(Urgency::code)
        .contains("spinal-emergency", "fever-after-puncture");
  }
}
