package cistern.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import cistern.fact.Status;
import cistern.measurement.Answer;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CriteriaTest {

  static Set<Set<String>> named(List<List<Item>> sets) {
    return sets.stream()
        .map(set -> set.stream().map(Item::code).collect(Collectors.toSet()))
        .collect(Collectors.toSet());
  }

  private static Set<Set<String>> parsed(String sets) {
    return sets.isEmpty()
        ? Set.of()
        : Set.of(sets.split(";", -1)).stream()
            .map(s -> Set.of(s.split("\\+", -1)))
            .collect(Collectors.toSet());
  }

  @Nested
  class Published {

    /** The eighteen worked cases of the decision tables, derived from the published row tables. */
    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            2017 | attack attacks=1 lesions=1 pv it bands=U rest=no | undetermined | bands
            2017 | attack attacks=1 lesions=1 pv it dit=U bands=U rest=no | undetermined | newOrMixedEnhancingLesions;bands
            2017 | attack attacks=1 lesions=1 pv dit=U bands=U rest=no | not-met | ''
            2017 | attack attacks=1 lesions=1 pv sc=U bands rest=no | undetermined | spinalCord
            2017 | attack attacks=+1 lesions=2 bands rest=no | met | ''
            2017 | attack attacks=2 lesions=2 nbe=U rest=no | undetermined | noBetterExplanation
            2017 | attack attacks=2 lesions=1 pv sc=U bands rest=no | undetermined | spinalCord
            2017 | progression attacks=0 12mo pv sc=U cord2=U bands=U rest=no | undetermined | cordLesionsTwoOrMore;bands
            2017 | progression attacks=0 12mo bands=U rest=no | not-met | ''
            2024 | attack nbe pv cj it sc | met | ''
            2024 | attack attacks=1 pv it csf=U cvs=U rest=no | undetermined | csfPositive;centralVeinSignSelectSix
            2024 | attack attacks=1 pv csf on=U cvs=U prl=U rest=no | undetermined | opticNerve;centralVeinSignSelectSix;paramagneticRimLesion
            2024 | attack attacks=1 pv it cj on=U rest=no | undetermined | opticNerve
            2024 | none pv it csf=U cvs=U rest=no | undetermined | csfPositive;centralVeinSignSelectSix
            2024 | none pv dit=U csf=U cvs=U rest=no | not-met | ''
            2024 | attack attacks=2 pv on rest=no | met | ''
            2024 | attack attacks=2 pv rest=no | undetermined | ''
            2024 | progression attacks=0 pv it sc csf 12mo rest=no | undetermined | ''
            """)
    void interpret_workedCase_verdictAndSets(
        String edition, String words, String verdict, String sets) {
      Stated stated = Stated.of(words);
      CriteriaResult result = edition.equals("2017") ? stated.result2017() : stated.result2024();

      assertThat(result.verdict().word()).isEqualTo(verdict);
      assertThat(named(result.missing())).isEqualTo(parsed(sets));
    }

    /** Rows and basis as the row tables give them (PMC7385797 table 2; course notes for 2024). */
    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            2017 | attack attacks=2 lesions=2 rest=no | 17-1 | attack
            2017 | attack attacks=2 lesions=1 historical rest=no | 17-2 | attack
            2017 | attack attacks=2 lesions=1 historical pv it rest=no | 17-2;17-3 | attack
            2017 | attack attacks=2 lesions=1 pv sc dit rest=no | 17-3 | attack
            2017 | attack attacks=1 lesions=2 dit bands rest=no | 17-4 | mri
            2017 | attack attacks=1 lesions=2 bands rest=no | 17-4 | ocb_substitute
            2017 | attack attacks=1 lesions=1 pv it dit rest=no | 17-5 | mri
            2017 | attack attacks=1 lesions=1 pv it dit=U bands rest=no | 17-5 | ocb_substitute
            2017 | attack attacks=+1 lesions=2 bands rest=no | 17-1;17-4 | ocb_substitute
            2017 | progression attacks=0 12mo it bands rest=no | 17-P | ''
            2024 | attack attacks=1 pv cj it on rest=no | 24-A | ''
            2024 | attack attacks=1 pv cj csf rest=no | 24-B | ''
            2024 | attack attacks=1 on dit prl rest=no | 24-C | ''
            2024 | none pv on cvs rest=no | 24-D | ''
            2024 | non-specific pv on dit rest=no | 24-D | ''
            2024 | attack attacks=2 pv on rest=no | 24-E | ''
            2024 | attack attacks=2 pv on csf rest=no | 24-B;24-E | ''
            2024 | attack attacks=2 pv cvs csf rest=no | 24-C | ''
            """)
    void interpret_met_rowsAndBasis(String edition, String words, String rows, String basis) {
      Stated stated = Stated.of(words);
      CriteriaResult result = edition.equals("2017") ? stated.result2017() : stated.result2024();

      assertThat(result.verdict()).isEqualTo(CriteriaVerdict.MET);
      assertThat(String.join(";", result.rows())).isEqualTo(rows);
      assertThat(result.disseminationInTime().map(DisseminationInTime::word).orElse(""))
          .isEqualTo(basis);
    }
  }

  @Nested
  class Against {

    @Test
    void interpret_openLesions_lowestCountSettlesAgainst() {
      CriteriaResult result =
          Stated.of("attack attacks=1 lesions=U pv it dit rest=no").result2017();

      assertThat(named(result.missing())).isEqualTo(Set.of(Set.of("objectiveLesions")));
      assertThat(named(result.missingAgainst())).isEqualTo(Set.of(Set.of("objectiveLesions")));
    }

    @Test
    void interpret_oneLesionAtLeast_metWithoutTheCount() {
      assertThat(Stated.of("attack attacks=1 lesions=+1 pv it dit rest=no").result2017().rows())
          .containsExactly("17-4", "17-5");
    }

    @Test
    void interpret_timeAndBandsOpen_bothNegativeSettleAgainst() {
      CriteriaResult result =
          Stated.of("attack attacks=1 lesions=1 pv it dit=U bands=U rest=no").result2017();

      assertThat(named(result.missingAgainst()))
          .isEqualTo(Set.of(Set.of("newOrMixedEnhancingLesions", "bands")));
    }

    @Test
    void interpret_progression2024_onlyABetterExplanationSettlesIt() {
      CriteriaResult result = Stated.of("progression pv it").result2024();

      assertThat(result.missing()).isEmpty();
      assertThat(named(result.missingAgainst())).isEqualTo(Set.of(Set.of("noBetterExplanation")));
      assertThat(result.note()).contains("consult the published criteria");
    }
  }

  @Nested
  class Presentations {

    @Test
    void interpret_unknown_setsOfAnAttackWithThePresentation() {
      CriteriaResult result =
          Stated.of("attacks=1 lesions=1 pv it dit=U bands=U rest=no").result2017();

      assertThat(result.verdict()).isEqualTo(CriteriaVerdict.UNDETERMINED);
      assertThat(named(result.missing()))
          .isEqualTo(
              Set.of(
                  Set.of("presentation", "newOrMixedEnhancingLesions"),
                  Set.of("presentation", "bands")));
    }

    @Test
    void interpret_unknownButAttackWouldMeet_onlyThePresentationIsMissing() {
      CriteriaResult result = Stated.of("attacks=2 lesions=2 rest=no").result2017();

      assertThat(named(result.missing())).isEqualTo(Set.of(Set.of("presentation")));
      assertThat(result.missingAgainst()).isEmpty();
    }

    @Test
    void interpret_unknownWithoutAttack_nothingWouldMeet() {
      assertThat(Stated.of("attacks=0 pv it").result2017().missing()).isEmpty();
    }

    @Test
    void interpret_isolated_2017HasNoRow() {
      CriteriaResult result = Stated.of("none pv it csf bands").result2017();

      assertThat(result.verdict()).isEqualTo(CriteriaVerdict.NOT_MET);
      assertThat(result.note()).contains("no row");
      assertThat(result.grounds().status()).isEqualTo(Status.DERIVED);
    }

    @ParameterizedTest
    @CsvSource({"non-specific,2017", "atypical,2017", "atypical,2024"})
    void interpret_notApplicable_undeterminedWithoutSets(String presentation, String edition) {
      Stated stated = Stated.of(presentation + " pv it bands csf");
      CriteriaResult result = edition.equals("2017") ? stated.result2017() : stated.result2024();

      assertThat(result.verdict()).isEqualTo(CriteriaVerdict.UNDETERMINED);
      assertThat(result.note()).contains("not applicable");
      assertThat(result.missing()).isEmpty();
      assertThat(result.missingAgainst()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"attack", "progression", "none", "non-specific", "atypical", "unknown"})
    void interpret_betterExplanation_notMetWhateverElse(String presentation) {
      Stated stated = Stated.of(presentation + " nbe=N attacks=0 pv cj it sc bands csf 12mo");

      assertThat(stated.result2017().verdict()).isEqualTo(CriteriaVerdict.NOT_MET);
      assertThat(stated.result2024().verdict()).isEqualTo(CriteriaVerdict.NOT_MET);
      assertThat(stated.result2017().note()).contains("better explanation");
    }
  }

  @Nested
  class Contradictions {

    @ParameterizedTest
    @CsvSource({
      "attack attacks=0,evidence.attacks",
      "none attacks=1,evidence.attacks",
      "progression attacks=+1,evidence.attacks",
      "attack cord2 sc=N,evidence.cordLesionsTwoOrMore"
    })
    void interpret_contradiction_bothEditionsUndetermined(String words, String place) {
      Stated stated = Stated.of(words + " nbe pv cj it on lesions=2");

      assertThat(stated.evidence().contradictions())
          .singleElement()
          .satisfies(
              problem -> {
                assertThat(problem.code()).isEqualTo("evidence-contradicts-itself");
                assertThat(problem.place()).isEqualTo(place);
                assertThat(problem.text()).contains("contradicts itself");
              });
      assertThat(stated.result2017().verdict()).isEqualTo(CriteriaVerdict.UNDETERMINED);
      assertThat(stated.result2024().verdict()).isEqualTo(CriteriaVerdict.UNDETERMINED);
      assertThat(stated.result2024().missing()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
      "attack attacks=+0",
      "attack attacks=U",
      "none attacks=0",
      "none attacks=+0",
      "progression attacks=U",
      "unknown attacks=0",
      "attack cord2 sc=U",
      "attack cord2=N sc=N"
    })
    void contradictions_consistent_none(String words) {
      assertThat(Stated.of(words).evidence().contradictions()).isEmpty();
    }

    @Test
    void interpret_twoCordLesions_theCordCounts() {
      assertThat(Stated.of("attack attacks=2 lesions=1 pv cord2 sc=U rest=no").result2017().rows())
          .containsExactly("17-3");
    }
  }

  @Nested
  class StatusOfAResult {

    @Test
    void grounds_fourRegions_read() {
      assertThat(Stated.of("attack attacks=1 nbe pv cj it sc csf").result2024().grounds().status())
          .isEqualTo(Status.READ);
    }

    @Test
    void grounds_2017_secondHand() {
      assertThat(Stated.of("attack attacks=2 lesions=2 rest=no").result2017().grounds().status())
          .isEqualTo(Status.SECOND_HAND);
    }

    @Test
    void grounds_secondAttackOpen_secondHandAndConsult() {
      CriteriaResult result = Stated.of("attack attacks=U pv rest=no").result2024();

      assertThat(result.grounds().status()).isEqualTo(Status.SECOND_HAND);
      assertThat(result.note()).contains("consult the published criteria");
    }

    @Test
    void grounds_notMet2024_unconfirmed() {
      CriteriaResult result = Stated.of("attack attacks=1 rest=no").result2024();

      assertThat(result.verdict()).isEqualTo(CriteriaVerdict.NOT_MET);
      assertThat(result.note()).contains("unconfirmed");
    }
  }

  @Nested
  class Puncture {

    private String effect(String words, String edition) {
      Stated stated = Stated.of(words);
      PunctureEffect effect =
          Criteria.of(Facts.standard()).puncture(stated.evidence(), stated.fluid()).get(edition);
      return effect == null ? "" : effect.word();
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            attack attacks=1 lesions=1 pv it rest=no | 2017 | decisive
            attack attacks=1 lesions=1 pv it rest=no | 2024 | decisive
            attack attacks=1 lesions=1 pv it dit=U rest=no | 2017 | narrows
            attack attacks=2 lesions=2 rest=no | 2017 | no-effect
            attack nbe attacks=1 pv cj it sc | 2024 | no-effect
            none pv it rest=no | 2017 | no-effect
            none pv it rest=no | 2024 | decisive
            atypical pv it | 2024 | no-effect
            attack attacks=1 lesions=1 pv cvs=U rest=no | 2024 | narrows
            """)
    void puncture_case_effect(String words, String edition, String expected) {
      assertThat(effect(words, edition)).isEqualTo(expected);
    }
  }

  @Nested
  class Checklist {

    @Test
    void checklist_attack_itemsWithEvidence() {
      assertThat(Stated.of("attack attacks=+1 lesions=2 pv").result2017().checklist())
          .contains(
              new Checked(Item.ATTACKS, Answer.UNKNOWN, "at least 1"),
              new Checked(Item.OBJECTIVE_LESIONS, Answer.YES, "2"),
              new Checked(Item.PERIVENTRICULAR, Answer.YES, "yes"))
          .extracting(Checked::item)
          .doesNotContain(Item.OPTIC_NERVE, Item.CENTRAL_VEIN_SIGN);
    }

    @Test
    void missing_order_leastBurdenFirst() {
      CriteriaResult result =
          Stated.of("attack attacks=1 pv it dit=U csf=U cvs=U rest=no").result2024();

      assertThat(result.missing())
          .containsExactly(
              List.of(Item.CENTRAL_VEIN_SIGN),
              List.of(Item.CSF_POSITIVE),
              List.of(Item.NEW_OR_MIXED_LESIONS));
    }
  }
}
