package cistern.interpretation;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bedside.Bedside;
import cistern.bedside.MicrobeTest;
import cistern.bedside.Sign;
import cistern.bedside.Syndrome;
import cistern.bedside.Treatment;
import cistern.criteria.Count;
import cistern.criteria.CriteriaVerdict;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.differential.Probability;
import cistern.differential.Serology;
import cistern.fact.Facts;
import cistern.finding.Uncertainty;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Circumstance;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.PanelText;
import cistern.statement.Conclusion;
import cistern.weighing.ClinicalPicture;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds for any bedside: the laws of the urgent rules, over people made by chance. */
class BedsideLawsTest {

  private static final Interpreter INTERPRETER = Interpreter.of(Facts.standard());

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void interpret_anyBedside_keepsTheLawsOfWhatIsUrgent(long seed) {
    Random random = new Random(seed);
    for (int person = 0; person < 60; person++) {
      Interpretation got = INTERPRETER.interpret(workup(random));
      var urgent = got.alerts().urgent();
      if (urgent.isOpen()) {
        assertThat(got.statements().getFirst()).isNotInstanceOf(Conclusion.class);
        assertThat(got.weighed().criteria()).allMatch(c -> c.verdict() != CriteriaVerdict.MET);
        assertThat(got.weighed().differential().probability().status())
            .isEqualTo(Probability.Status.OUTSIDE_DOMAIN);
      }
      assertThat(urgent.all()).isSortedAccordingTo((a, b) -> a.tier().compareTo(b.tier()));
      assertThat(got.alerts().stops().stream().map(s -> s.code()).toList()).doesNotHaveDuplicates();
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {7, 8})
  void judge_anyBedside_saysWhatInterpretSays(long seed) {
    Random random = new Random(seed);
    for (int person = 0; person < 60; person++) {
      Workup workup = workup(random);
      Interpretation whole = INTERPRETER.interpret(workup);
      Judged judged = INTERPRETER.judge(workup);

      assertThat(judged.puncture().findings().all())
          .isEqualTo(
              whole.findings().all().stream()
                  .map(f -> f.withUncertainty(Uncertainty.NONE))
                  .toList());
      assertThat(judged.judgement().criteria().entrySet().stream().map(e -> e.toString()).toList())
          .isEqualTo(
              whole.weighed().criteria().stream()
                  .map(c -> c.edition() + "=" + c.verdict())
                  .toList());
      assertThat(judged.judgement().probability())
          .isEqualTo(whole.weighed().differential().probability());
    }
  }

  private static Workup workup(Random random) {
    Panel panel =
        PanelText.parse(
                random.nextInt(1, 85),
                """
                albumin.csf=%d albumin.serum=42000 igg.csf=%d igg.serum=11000 kappa-flc.csf=%d \
                kappa-flc.serum=12 leukocytes.csf=%d total-protein.csf=%d lactate.csf=%d \
                glucose.csf=%d glucose.serum=5 erythrocytes.csf=%d"""
                    .formatted(
                        random.nextInt(120, 900),
                        random.nextInt(15, 90),
                        random.nextInt(1, 5),
                        random.nextInt(0, 90),
                        random.nextInt(250, 2400),
                        random.nextInt(1, 6),
                        random.nextInt(1, 5),
                        random.nextInt(0, 6000)))
            .withCircumstances(circumstances(random));
    Draw csf =
        new Draw(
            Optional.of(PanelText.DRAWN),
            Optional.empty(),
            Optional.of(one(random, "clear", "turbid", "xanthochromic", "yellow", "bloody")),
            Optional.of(one(random, "lumbar", "lumbar", "lumbar", "ventricular")),
            OptionalDouble.empty(),
            new Draw.Looked(
                answer(random),
                random.nextInt(9) == 0 ? Answer.YES : Answer.NO,
                Optional.of(one(random, "sitting", "lateral"))));
    Workup plain =
        new Workup(
            "test",
            panel.withDraws(csf, Draw.at(PanelText.DRAWN)),
            Interpreted.bands(random.nextInt(0, 5), random.nextInt(0, 3), 0),
            List.of());
    return plain.withClinical(clinical(random));
  }

  private static Map<Circumstance, Answer> circumstances(Random random) {
    Map<Circumstance, Answer> all = new EnumMap<>(Circumstance.class);
    for (Circumstance circumstance : Circumstance.values()) {
      all.put(circumstance, random.nextInt(6) == 0 ? Answer.YES : answer(random));
    }
    return all;
  }

  private static ClinicalPicture clinical(Random random) {
    Map<Sign, Answer> signs = new EnumMap<>(Sign.class);
    for (Sign sign : Sign.values()) {
      signs.put(sign, random.nextInt(4) == 0 ? answer(random) : Answer.NO);
    }
    Bedside bedside =
        new Bedside(
            signs,
            new Bedside.Attack(
                List.of(any(random, List.of(Syndrome.values()))),
                random.nextBoolean() ? List.of() : List.of("bilateral optic neuritis"),
                Optional.of(PanelText.DRAWN.minusDays(random.nextInt(1, 200)))),
            random.nextInt(3) == 0 ? List.of(microbe(random), microbe(random)) : List.of(),
            random.nextInt(3) == 0 ? List.of(treatment(random)) : List.of(),
            List.of());
    Evidence evidence =
        new Evidence(
            any(random, List.of(Presentation.values())),
            Count.of(1),
            Count.of(1),
            Map.of(Item.NO_BETTER_EXPLANATION, Answer.YES, Item.PERIVENTRICULAR, Answer.YES));
    return new ClinicalPicture(evidence, Optional.empty(), List.of(serology(random)))
        .withBedside(bedside);
  }

  private static MicrobeTest microbe(Random random) {
    return new MicrobeTest(
        one(random, "gram", "culture", "pcr", "antigen", "vdrl", "acid-fast"),
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(one(random, "hsv-1", "vzv", "cryptococcus", "borrelia", "enterovirus")),
        random.nextInt(4) == 0 ? Compartment.SERUM : Compartment.CSF,
        any(random, List.of(MicrobeTest.Result.values())),
        Optional.empty());
  }

  private static Treatment treatment(Random random) {
    return new Treatment(
        one(random, "natalizumab", "rituximab", "methylprednisolone", "cladribine", "IVIG", "PLEX"),
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(PanelText.DRAWN.minusDays(random.nextInt(-20, 200))),
        Optional.empty());
  }

  private static Serology serology(Random random) {
    return new Serology(
        one(random, "aqp4-igg", "mog-igg", "treponemal", "nmdar-igg"),
        random.nextInt(4) == 0 ? Compartment.CSF : Compartment.SERUM,
        any(random, List.of(Serology.Result.values())),
        any(random, List.of(Serology.Method.values())),
        random.nextBoolean() ? Optional.empty() : Optional.of("1:" + random.nextInt(5, 400)));
  }

  private static Answer answer(Random random) {
    return any(random, List.of(Answer.values()));
  }

  private static <T> T any(Random random, List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  private static String one(Random random, String... of) {
    return of[random.nextInt(of.length)];
  }
}
