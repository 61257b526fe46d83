package cistern.redflag;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandPattern;
import cistern.bands.BandReport;
import cistern.criteria.Evidence;
import cistern.differential.Disease;
import cistern.differential.Serology;
import cistern.interpretation.Interpretation;
import cistern.interpretation.Interpreted;
import cistern.interpretation.Interpreter;
import cistern.interpretation.Workup;
import cistern.measurement.Compartment;
import cistern.panel.Draw;
import cistern.panel.PanelText;
import cistern.weighing.ClinicalPicture;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RedFlagsTest {

  private static final String PAIR =
      "albumin.csf=220 albumin.serum=42000 igg.csf=62 igg.serum=11000 ";

  private static List<RedFlag> flags(String results, BandReport bands) {
    return Interpreted.of(PanelText.parse(34, results), bands).weighed().flags();
  }

  private static BandReport pattern(int number) {
    return new BandReport.Patterned(
        BandPattern.parse(number).orElseThrow(), BandReport.Origin.UNKNOWN);
  }

  private static List<String> codes(List<RedFlag> flags) {
    return flags.stream().map(RedFlag::code).toList();
  }

  /** Thresholds as in the fact table; a value at the threshold does not raise the flag. */
  @ParameterizedTest
  @CsvSource({
    "leukocytes.csf=30,''",
    "leukocytes.csf=31,leukocytes-raised",
    "leukocytes.csf=40,leukocytes-raised",
    "leukocytes.csf=41,leukocytes-beyond-ms",
    "leukocytes.csf=20 neutrophils.csf=0.49,''",
    "leukocytes.csf=20 neutrophils.csf=0.5,neutrophils-prominent",
    "leukocytes.csf=2 neutrophils.csf=0.9,''",
    "leukocytes.csf=20 eosinophils.csf=0.1,eosinophils-prominent",
    "leukocytes.csf=20 eosinophils.csf=0.09,''",
    "total-protein.csf=1000,''",
    "total-protein.csf=1001,protein-high",
    "lactate.csf=2.7,''",
    "lactate.csf=2.8,lactate-high",
    "glucose.csf=1.5 glucose.serum=5,glucose-ratio-low",
    "glucose.csf=3 glucose.serum=5,''"
  })
  void check_value_flag(String results, String code) {
    List<String> found = codes(flags(PAIR + results, Interpreted.bands(6, 0, 0)));

    assertThat(String.join(",", found)).isEqualTo(code);
  }

  @ParameterizedTest
  @CsvSource({"421,albumin-quotient-high", "419,''"})
  void check_albumin_overTenPerThousand(int csf, String code) {
    List<RedFlag> found =
        flags("albumin.csf=%d albumin.serum=42000".formatted(csf), Interpreted.bands(6, 0, 0));

    assertThat(String.join(",", codes(found))).isEqualTo(code);
  }

  @ParameterizedTest
  @CsvSource({
    "4,bands-alike;no-csf-only-bands",
    "5,monoclonal-ladder",
    "1,no-csf-only-bands",
    "2,''",
    "3,''"
  })
  void check_pattern_flag(int number, String expected) {
    assertThat(String.join(";", codes(flags(PAIR, pattern(number))))).isEqualTo(expected);
  }

  @Test
  void check_alikeBands_neverRulesOut() {
    assertThat(flags(PAIR, pattern(4)).getFirst().text()).contains("do not rule it out");
  }

  @Test
  void check_noBands_suggestsMimicsWithSource() {
    RedFlag flag = flags(PAIR, Interpreted.bands(0, 0, 0)).getFirst();

    assertThat(flag.finding()).isEqualTo("bands");
    assertThat(flag.suggests()).contains(Disease.MOGAD, Disease.NMOSD, Disease.NEUROSARCOIDOSIS);
    assertThat(flag.grounds().sources()).anyMatch(s -> s.contains("Deisenhammer 2019"));
  }

  @Test
  void check_drawnTooFarApart_bandsRaiseNothing() {
    OffsetDateTime at = OffsetDateTime.parse("2031-03-02T10:15:00Z");
    Interpretation apart =
        Interpreted.of(
            PanelText.parse(34, PAIR).withDraws(Draw.at(at), Draw.at(at.plusDays(20))), pattern(4));

    assertThat(apart.weighed().flags()).isEmpty();
  }

  @Test
  void check_igmOnly_igmDominant() {
    List<RedFlag> found =
        flags(
            "albumin.csf=220 albumin.serum=42000 igg.csf=20 igg.serum=11000 igm.csf=6"
                + " igm.serum=1500",
            Interpreted.bands(6, 0, 0));

    assertThat(codes(found)).containsExactly("igm-dominant-synthesis");
  }

  @Test
  void check_threeClasses_flag() {
    List<RedFlag> found =
        flags(
            "albumin.csf=220 albumin.serum=42000 igg.csf=200 igg.serum=11000 igm.csf=6"
                + " igm.serum=1500 iga.csf=30 iga.serum=2000",
            Interpreted.bands(6, 0, 0));

    assertThat(codes(found)).contains("three-class-synthesis");
  }

  @ParameterizedTest
  @CsvSource({"leukocytes.csf=35,6", "'',0"})
  void check_negativeMrzWithSign_neurosarcoidosis(String more, int csfOnly) {
    String specific =
        "measles-igg.csf=1 measles-igg.serum=1000 rubella-igg.csf=1 rubella-igg.serum=1000"
            + " varicella-zoster-igg.csf=1 varicella-zoster-igg.serum=1000 ";
    List<RedFlag> found = flags(PAIR + specific + more, Interpreted.bands(csfOnly, 0, 0));

    assertThat(found)
        .filteredOn(f -> f.code().equals("mrz-negative-with-sign"))
        .singleElement()
        .satisfies(f -> assertThat(f.suggests()).containsExactly(Disease.NEUROSARCOIDOSIS));
  }

  @ParameterizedTest
  @CsvSource({
    "mog-igg,SERUM,POSITIVE,mog-antibody",
    "aqp4-igg,SERUM,POSITIVE,aqp4-antibody",
    "mog-igg,SERUM,NEGATIVE,''",
    "mog-igg,CSF,POSITIVE,''",
    "ana,SERUM,POSITIVE,''"
  })
  void check_serology_flag(String test, Compartment in, Serology.Result result, String expected) {
    Workup workup =
        new Workup("test", PanelText.parse(34, PAIR), Interpreted.bands(6, 0, 0), List.of())
            .withClinical(
                new ClinicalPicture(
                    Evidence.UNKNOWN, Optional.empty(), List.of(new Serology(test, in, result))));
    List<RedFlag> found = Interpreter.of(Interpreted.FACTS).interpret(workup).weighed().flags();

    assertThat(String.join(",", codes(found))).isEqualTo(expected);
  }

  @Test
  void check_xanthochromic_flag() {
    Draw yellow =
        new Draw(
            Optional.empty(),
            Optional.empty(),
            Optional.of("Xanthochromic"),
            Optional.empty(),
            OptionalDouble.empty());
    Interpretation interpretation =
        Interpreted.of(
            PanelText.parse(34, PAIR).withDraws(yellow, Draw.UNKNOWN), Interpreted.bands(6, 0, 0));

    assertThat(codes(interpretation.weighed().flags())).containsExactly("xanthochromic-fluid");
  }

  @Test
  void check_everyFlag_suggestsAndCitesAndNeverExcludes() {
    List<RedFlag> found =
        flags(
            PAIR
                + "leukocytes.csf=60 neutrophils.csf=0.7 total-protein.csf=2000 lactate.csf=5"
                + " glucose.csf=1 glucose.serum=5",
            pattern(4));

    assertThat(found).hasSizeGreaterThan(5);
    assertThat(found)
        .allSatisfy(
            f -> {
              assertThat(f.suggests()).isNotEmpty();
              assertThat(f.grounds().sources()).isNotEmpty();
              assertThat(f.text()).doesNotContain("exclude").endsWith(".");
            });
  }
}
