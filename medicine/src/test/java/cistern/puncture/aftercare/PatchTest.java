package cistern.puncture.aftercare;

import static cistern.puncture.procedure.WarningSign.DOUBLE_VISION;
import static cistern.puncture.procedure.WarningSign.SADDLE_NUMBNESS;
import static cistern.puncture.procedure.WarningSign.SEIZURE;
import static org.assertj.core.api.Assertions.assertThat;

import cistern.bedside.Bedside;
import cistern.bedside.RuleReply;
import cistern.fact.Grounds;
import cistern.measurement.Answer;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.PuncturedPerson;
import cistern.puncture.procedure.Question;
import cistern.puncture.procedure.WarningSign;
import cistern.urgent.Tier;
import cistern.urgent.Urgency;
import cistern.urgent.Urgent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PatchTest extends AfterCareCases {

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
