package cistern.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.criteria.Burden;
import cistern.criteria.Count;
import cistern.criteria.CriteriaVerdict;
import cistern.criteria.Evidence;
import cistern.criteria.Item;
import cistern.criteria.Presentation;
import cistern.criteria.PunctureEffect;
import cistern.differential.Prior;
import cistern.differential.Serology;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreted;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Answer;
import cistern.measurement.Compartment;
import cistern.panel.Draw;
import cistern.panel.Panel;
import cistern.panel.PanelText;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class WeighingTest {

  private static final String PAIR =
      "albumin.csf=220 albumin.serum=42000 igg.csf=62 igg.serum=11000";
  private static final Interpreter INTERPRETER = Interpreter.of(Interpreted.FACTS);
  private static final Evidence FIRST_ATTACK =
      new Evidence(
          Presentation.ATTACK,
          Count.of(1),
          Count.of(1),
          Map.of(
              Item.NO_BETTER_EXPLANATION, Answer.YES,
              Item.PERIVENTRICULAR, Answer.YES,
              Item.INFRATENTORIAL, Answer.YES,
              Item.CORTICAL_JUXTACORTICAL, Answer.NO));

  private static Interpretation of(Panel panel, BandReport bands, ClinicalPicture clinical) {
    return INTERPRETER.interpret(
        new Workup("test", panel, bands, List.of()).withClinical(clinical));
  }

  private static Weighed weighed(String results, BandReport bands, Evidence evidence) {
    Panel panel = results.isEmpty() ? PanelText.parse(34, "") : PanelText.parse(34, results);
    return of(panel, bands, new ClinicalPicture(evidence, Optional.empty(), List.of())).weighed();
  }

  private static List<String> items(Weighed weighed) {
    return weighed.next().stream().map(NextItem::item).toList();
  }

  @Nested
  class Together {

    @Test
    void weigh_firstAttackWithBands_2017ByBandsAnd2024() {
      Weighed weighed = weighed(PAIR, Interpreted.bands(6, 0, 0), FIRST_ATTACK);

      assertThat(weighed.criteria().getFirst().rows()).containsExactly("17-5");
      assertThat(weighed.criteria().getFirst().disseminationInTime().orElseThrow().word())
          .isEqualTo("ocb_substitute");
      assertThat(weighed.criteria().getLast().verdict()).isEqualTo(CriteriaVerdict.MET);
      assertThat(weighed.difference()).isEmpty();
      assertThat(weighed.puncture().effects())
          .containsEntry("2017", PunctureEffect.NARROWS)
          .containsEntry("2024", PunctureEffect.NARROWS);
    }

    @Test
    void weigh_kappaWithoutBands_editionsDifferByKappa() {
      Weighed weighed =
          weighed(
              PAIR + " kappa-flc.csf=5 kappa-flc.serum=15",
              Interpreted.bands(0, 0, 0),
              FIRST_ATTACK);

      assertThat(weighed.criteria().getLast().verdict()).isEqualTo(CriteriaVerdict.MET);
      assertThat(weighed.difference().orElseThrow()).contains("κ index");
      assertThat(weighed.criteria().getFirst().note()).contains("discordant");
    }

    @Test
    void weigh_opticNerveAsSecondRegion_editionsDifferByIt() {
      Evidence optic =
          new Evidence(
              Presentation.ATTACK,
              Count.of(1),
              Count.of(1),
              Map.of(
                  Item.NO_BETTER_EXPLANATION, Answer.YES,
                  Item.PERIVENTRICULAR, Answer.YES,
                  Item.INFRATENTORIAL, Answer.NO,
                  Item.CORTICAL_JUXTACORTICAL, Answer.NO,
                  Item.SPINAL_CORD, Answer.NO,
                  Item.OPTIC_NERVE, Answer.YES));
      Weighed weighed = weighed(PAIR, Interpreted.bands(6, 0, 0), optic);

      assertThat(weighed.criteria().getFirst().verdict()).isEqualTo(CriteriaVerdict.NOT_MET);
      assertThat(weighed.criteria().getLast().rows()).contains("24-B");
      assertThat(weighed.difference().orElseThrow()).contains("optic nerve involvement");
    }

    @Test
    void weigh_contradiction_problemAndUndetermined() {
      Evidence evidence = new Evidence(Presentation.ATTACK, Count.of(0), Count.UNKNOWN, Map.of());
      Interpretation interpretation =
          of(
              PanelText.parse(34, PAIR),
              Interpreted.bands(6, 0, 0),
              new ClinicalPicture(evidence, Optional.empty(), List.of()));

      assertThat(Interpreted.problems(interpretation)).contains("evidence-contradicts-itself");
    }

    @Test
    void weigh_drawnTooFarApart_bandsUnknownEverywhere() {
      OffsetDateTime at = OffsetDateTime.parse("2031-03-02T10:15:00Z");
      Panel apart = PanelText.parse(34, PAIR).withDraws(Draw.at(at), Draw.at(at.plusDays(20)));
      Weighed weighed =
          of(
                  apart,
                  Interpreted.bands(6, 0, 0),
                  new ClinicalPicture(FIRST_ATTACK, Optional.empty(), List.of()))
              .weighed();

      assertThat(weighed.criteria().getFirst().verdict()).isEqualTo(CriteriaVerdict.UNDETERMINED);
      assertThat(weighed.differential().weights()).isEmpty();
      assertThat(items(weighed))
          .contains("serum-redraw")
          .doesNotContain("bands", "kappa-flc", "mrz-reaction");
    }
  }

  @Nested
  class Next {

    @Test
    void next_nothingDone_punctureFirst() {
      Weighed weighed = weighed("", new BandReport.NotReported(), FIRST_ATTACK);

      assertThat(items(weighed)).contains("puncture", "mri", "mog-igg").doesNotContain("kappa-flc");
    }

    @Test
    void next_noBands_kappaOnTheSameSampleBeforeARepeat() {
      Weighed weighed = weighed(PAIR, Interpreted.bands(0, 0, 0), FIRST_ATTACK);

      assertThat(items(weighed)).contains("kappa-flc", "repeat-puncture");
      assertThat(items(weighed).indexOf("kappa-flc"))
          .isLessThan(items(weighed).indexOf("repeat-puncture"));
    }

    @Test
    void next_oneBand_repeatTheFocusing() {
      assertThat(items(weighed(PAIR, Interpreted.bands(1, 0, 0), FIRST_ATTACK)))
          .contains("repeat-focusing", "kappa-flc");
    }

    @Test
    void next_resultsWithoutBands_focusing() {
      assertThat(items(weighed(PAIR, new BandReport.NotReported(), FIRST_ATTACK)))
          .contains("bands")
          .doesNotContain("puncture");
    }

    @Test
    void next_csfOnly_serum() {
      Panel csfOnly =
          PanelText.parse(34, "albumin.csf=220").withDraws(Draw.at(PanelText.DRAWN), Draw.UNKNOWN);
      ClinicalPicture clinical = new ClinicalPicture(FIRST_ATTACK, Optional.empty(), List.of());

      assertThat(items(of(csfOnly, new BandReport.NotReported(), clinical).weighed()))
          .contains("serum-redraw")
          .doesNotContain("bands");
    }

    @Test
    void next_unconfirmedGel_confirmItFirst() {
      BandReport gel =
          new BandReport.ReadFromGel(
              "gel.png",
              BandCounts.of(7, 0, 0),
              Optional.of(BandPattern.LOCAL),
              OptionalDouble.of(0.99),
              List.of(),
              Optional.empty());
      Weighed weighed = weighed(PAIR, gel, FIRST_ATTACK);

      assertThat(items(weighed).getFirst()).isEqualTo("confirm-gel");
      assertThat(weighed.next().getFirst().burden()).isEqualTo(Burden.RECORD);
    }

    @Test
    void next_everyItem_saysWhatItCouldChange() {
      Weighed weighed = weighed(PAIR, Interpreted.bands(0, 0, 0), Evidence.UNKNOWN);

      assertThat(weighed.next())
          .allSatisfy(item -> assertThat(item.changes()).isNotEmpty())
          .allSatisfy(item -> assertThat(item.informationBits()).isEmpty());
      assertThat(items(weighed)).contains("history").doesNotContain("mrz-reaction");
    }

    @Test
    void next_metBothWays_onlyTheDiseaseIsOpen() {
      Evidence all =
          new Evidence(
              Presentation.ATTACK,
              Count.of(2),
              Count.of(2),
              Map.of(
                  Item.NO_BETTER_EXPLANATION, Answer.YES,
                  Item.PERIVENTRICULAR, Answer.YES,
                  Item.INFRATENTORIAL, Answer.YES));
      Weighed weighed = weighed(PAIR, Interpreted.bands(6, 0, 0), all);

      assertThat(weighed.next())
          .allSatisfy(i -> assertThat(i.criteriaBits()).isCloseTo(0, within(1e-9)));
      assertThat(items(weighed)).doesNotContain("mri", "history");
    }

    @Test
    void next_antibodyDone_notAskedAgain() {
      ClinicalPicture clinical =
          new ClinicalPicture(
              FIRST_ATTACK,
              Optional.of(new Prior(0.3, 0.6, Answer.YES)),
              List.of(new Serology("mog-igg", Compartment.SERUM, Serology.Result.NEGATIVE)));
      Weighed weighed =
          of(PanelText.parse(34, PAIR), Interpreted.bands(6, 0, 0), clinical).weighed();

      assertThat(items(weighed)).doesNotContain("mog-igg");
      assertThat(weighed.differential().probability().given()).isPresent();
      assertThat(weighed.next()).allSatisfy(item -> assertThat(item.informationBits()).isPresent());
    }
  }

  @Nested
  class Prompts {

    private List<String> codes(double age, Map<Item, Answer> answers) {
      Evidence evidence = new Evidence(Presentation.ATTACK, Count.UNKNOWN, Count.UNKNOWN, answers);
      return of(
              PanelText.parse(age, PAIR),
              Interpreted.bands(6, 0, 0),
              new ClinicalPicture(evidence, Optional.empty(), List.of()))
          .weighed()
          .prompts()
          .stream()
          .map(p -> p.code())
          .toList();
    }

    @Test
    void prompts_ageAndIllness() {
      assertThat(codes(34, Map.of())).isEmpty();
      assertThat(codes(50, Map.of())).containsExactly("extra-support");
      assertThat(codes(34, Map.of(Item.VASCULAR_RISK, Answer.YES)))
          .containsExactly("extra-support");
      assertThat(codes(34, Map.of(Item.HEADACHE_DISORDER, Answer.YES)))
          .containsExactly("extra-support");
      assertThat(codes(11.9, Map.of())).containsExactly("test-mog-antibody");
      assertThat(codes(12, Map.of())).isEmpty();
    }
  }

  @Nested
  class Said {

    @Test
    void statements_evidenceStated_criteriaAndWhatIsAtypical() {
      Interpretation interpretation =
          of(
              PanelText.parse(34, PAIR + " leukocytes.csf=60"),
              Interpreted.bands(0, 0, 0),
              new ClinicalPicture(FIRST_ATTACK, Optional.empty(), List.of()));

      assertThat(interpretation.statements())
          .filteredOn(s -> s.code().equals("criteria"))
          .singleElement()
          .satisfies(s -> assertThat(s.text()).contains("2017", "2024"));
      assertThat(interpretation.statements())
          .filteredOn(s -> s.code().equals("atypical-for-ms"))
          .singleElement()
          .satisfies(
              s ->
                  assertThat(s.text())
                      .contains("60 leukocytes", "To think of", "infection")
                      .doesNotContain("excludes"));
    }

    @Test
    void statements_nothingStated_noCriteria() {
      assertThat(Interpreted.of(PanelText.parse(34, PAIR)).statements())
          .noneMatch(s -> s.code().equals("criteria"));
    }
  }
}
