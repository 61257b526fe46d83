package cistern.puncture.decision;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import cistern.measurement.Answer;
import cistern.puncture.PuncturePlan;
import cistern.puncture.PuncturePlans;
import cistern.puncture.procedure.After;
import cistern.puncture.procedure.Antithrombotic;
import cistern.puncture.procedure.Coagulation;
import cistern.puncture.procedure.Done;
import cistern.puncture.procedure.DoseClass;
import cistern.puncture.procedure.Given;
import cistern.puncture.procedure.Procedure;
import cistern.puncture.procedure.Question;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PunctureVerdictTest {

  private static final Facts FACTS = Facts.standard();
  private static final PuncturePlans PLANS = PuncturePlans.of(FACTS);

  /** Everything asked, nothing in the way. */
  private static Given clear() {
    return Given.allNo()
        .yes(Question.MRI_REVIEWED, Question.CONSENT, Question.SERUM_PLANNED)
        .coma(15)
        .taking()
        .coagulation(blood(200, 1.0));
  }

  private static Coagulation blood(double platelets, double inr) {
    return new Coagulation(
        OptionalDouble.of(platelets),
        OptionalDouble.of(inr),
        OptionalDouble.empty(),
        Optional.empty());
  }

  private static PunctureVerdict verdict(PuncturePlans plans, Given given) {
    return plan(plans, given).decision().verdict();
  }

  private static PuncturePlan plan(PuncturePlans plans, Given given) {
    return plans.of(
        new Procedure(given.before(), Done.UNKNOWN, After.UNKNOWN),
        Given.subject(34, "female"),
        List.of());
  }

  private static PunctureVerdict verdict(Given given) {
    return verdict(PLANS, given);
  }

  @Test
  void of_everythingAnsweredAndNothingThere_goes() {
    assertThat(verdict(clear()))
        .isEqualTo(new PunctureVerdict(Contraindication.Go.GO, List.of(), Optional.empty()));
  }

  @Test
  void of_nothingKnown_asks() {
    assertThat(verdict(Given.nothing()).go()).isEqualTo(Contraindication.Go.ASK);
  }

  @ParameterizedTest
  @CsvSource({
    "MASS_EFFECT, DO_NOT, mass-or-raised-pressure",
    "HYDROCEPHALUS, DO_NOT, mass-or-raised-pressure",
    "HERNIATION_SIGNS, DO_NOT, mass-or-raised-pressure",
    "SPINAL_BLOCK, IMAGE_FIRST, spinal-block",
    "SITE_INFECTION, DO_NOT, site-infection",
    "BLEEDING_DISORDER, WAIT, clotting",
    "DYSRAPHISM, IMAGE_FIRST, spine-anomaly",
    "SPINE_ANOMALY, IMAGE_FIRST, spine-anomaly",
    "TETHERED_CORD, IMAGE_FIRST, spine-anomaly",
    "TONSILLAR_DESCENT, IMAGE_FIRST, spine-anomaly",
    "CARDIORESPIRATORY, WAIT, unstable",
    "CONTINUOUS_SEIZURES, WAIT, unstable",
    "CANNOT_BE_POSITIONED, WAIT, unstable",
    "DECLINED, DO_NOT, declined",
    "LACKS_CAPACITY, DO_NOT, declined"
  })
  void of_oneThing_givesItsVerdictAndCode(Question question, Contraindication.Go go, String code) {
    PunctureVerdict found = verdict(clear().yes(question));

    assertThat(found.go()).isEqualTo(go);
    assertThat(found.because()).containsExactly(code);
  }

  @ParameterizedTest
  @EnumSource(
      value = Question.class,
      names = {
        "MASS_EFFECT",
        "SPINAL_BLOCK",
        "SITE_INFECTION",
        "BLEEDING_DISORDER",
        "DYSRAPHISM",
        "CARDIORESPIRATORY",
        "DECLINED",
        "CONSENT"
      })
  void of_oneQuestionOpen_asks(Question question) {
    assertThat(verdict(clear().with(question, Answer.UNKNOWN)).go())
        .isEqualTo(Contraindication.Go.ASK);
  }

  /** In MS a lesion of the posterior fossa is usual: it counts with mass effect only. */
  @Test
  void of_posteriorFossaLesionWithoutEffect_goes() {
    assertThat(verdict(clear().yes(Question.POSTERIOR_FOSSA_LESION)).go())
        .isEqualTo(Contraindication.Go.GO);
    assertThat(
            verdict(
                    clear()
                        .yes(Question.POSTERIOR_FOSSA_LESION)
                        .with(Question.MASS_EFFECT, Answer.UNKNOWN))
                .go())
        .isEqualTo(Contraindication.Go.ASK);
  }

  /** Tumani 2020, table 2: under 10 absolute, 10 to 50 relative, over 50 no objection. */
  @ParameterizedTest
  @CsvSource({"9.9, DO_NOT", "10, WAIT", "50, WAIT", "50.1, GO"})
  void of_platelets_followTheirZones(double platelets, Contraindication.Go go) {
    assertThat(verdict(clear().coagulation(blood(platelets, 1.0))).go()).isEqualTo(go);
  }

  /** Every guideline is content up to 1.4, none over 3; between them they differ. */
  @ParameterizedTest
  @CsvSource({"1.4, GO", "1.41, ASK", "2.0, ASK", "2.1, WAIT", "3.5, WAIT"})
  void of_inr_asksWhereTheGuidelinesDiffer(double inr, Contraindication.Go go) {
    assertThat(verdict(clear().coagulation(blood(200, inr))).go()).isEqualTo(go);
  }

  @Test
  void of_localLimit_decidesAlone() {
    PuncturePlans local =
        PuncturePlans.of(
            FACTS.with(
                new Policy(
                    "ours",
                    Map.of(
                        "coagulation.platelets.local.clear-from",
                        new Policy.Change(new FactValue.Figure(40), "ward rule 1")))));

    assertThat(verdict(local, clear().coagulation(blood(40, 1.0))).go())
        .isEqualTo(Contraindication.Go.GO);
    assertThat(verdict(local, clear().coagulation(blood(39, 1.0))).go())
        .isEqualTo(Contraindication.Go.WAIT);
  }

  @ParameterizedTest
  @EnumSource(
      value = Question.class,
      names = {"PAPILLOEDEMA", "NEW_SEIZURE", "FOCAL_SIGNS", "IMMUNOCOMPROMISED"})
  void of_aSignOfRaisedPressure_imagesFirstUnlessTheScanWasSeenAndNothingChanged(Question sign) {
    assertThat(verdict(clear().yes(sign)).go()).isEqualTo(Contraindication.Go.GO);
    assertThat(verdict(clear().yes(sign).with(Question.MRI_REVIEWED, Answer.NO)).because())
        .contains("image-first");
    assertThat(verdict(clear().yes(sign, Question.CHANGED_SINCE_SCAN)).go())
        .isEqualTo(Contraindication.Go.IMAGE_FIRST);
    assertThat(verdict(clear().yes(sign).with(Question.CHANGED_SINCE_SCAN, Answer.UNKNOWN)).go())
        .isEqualTo(Contraindication.Go.ASK);
  }

  @Test
  void of_severalThings_putsTheHeaviestFirst() {
    PunctureVerdict found =
        verdict(
            clear().yes(Question.CARDIORESPIRATORY, Question.DYSRAPHISM, Question.SITE_INFECTION));

    assertThat(found.go()).isEqualTo(Contraindication.Go.DO_NOT);
    assertThat(found.because()).containsExactly("site-infection", "spine-anomaly", "unstable");
  }

  /** A medical society's 72 h after a full dose of apixaban, the longest printed. */
  @Test
  void of_anIntervalNotPassed_waitsUntilTheLongestPrinted() {
    OffsetDateTime last = Given.PLANNED.minusHours(20);
    PunctureVerdict found =
        verdict(
            clear()
                .clearance(90)
                .taking(
                    new Antithrombotic(
                        "Eliquis 5 mg 1-0-1",
                        DoseClass.UNKNOWN,
                        Optional.of(last),
                        OptionalDouble.empty(),
                        Antithrombotic.Level.UNKNOWN)));

    assertThat(found.go()).isEqualTo(Contraindication.Go.WAIT);
    assertThat(found.because()).containsExactly("antithrombotic");
    assertThat(found.earliest()).contains(last.plusHours(72));
  }

  @ParameterizedTest
  @CsvSource({
    "Foobarin, ASK",
    "NOAK, ASK",
    "Heparin, ASK",
    "Previscan, ASK",
    "Imbruvica, ASK",
    "Novalgin, ASK",
    "Xarelto 20, ASK",
    "ASS 100, GO",
    "Ibuprofen, GO",
    "5-ASA, GO",
    "Sertralin, GO",
    "ASA III, GO",
    "Actilyse, ASK"
  })
  void of_aNameWithoutATime_asksUnlessNothingIsAskedFor(String typed, Contraindication.Go go) {
    PuncturePlan plan =
        plan(PLANS, clear().clearance(90).taking(Given.drug(typed, DoseClass.UNKNOWN)));

    assertThat(plan.decision().verdict().go()).isEqualTo(go);
    assertThat(plan.decision().verdict().earliest()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"47.9, WAIT, clotting", "48, ASK, antithrombotic"})
  void of_thrombolysis_waits48Hours(double hours, Contraindication.Go go, String code) {
    PunctureVerdict found =
        verdict(clear().taking(Given.drug("Actilyse", DoseClass.UNKNOWN, hours)));

    assertThat(found.go()).isEqualTo(go);
    assertThat(found.because()).contains(code);
  }

  @Test
  void of_nobodyAskedAboutDrugs_asks() {
    assertThat(
            verdict(
                    Given.allNo()
                        .yes(Question.MRI_REVIEWED, Question.CONSENT)
                        .coma(15)
                        .coagulation(blood(200, 1)))
                .because())
        .containsExactly("antithrombotic");
  }
}
