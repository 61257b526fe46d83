package cistern.puncture.drug;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrugsTest {

  private static final Facts FACTS = Facts.standard();
  private static final Drugs DRUGS = Drugs.of(FACTS);

  private static List<String> names(String typed) {
    return DRUGS.parse(typed).stream().map(t -> t.recognised().orElse("?")).toList();
  }

  /**
   * 202 strings written down from the habits of several countries before the table was read again.
   */
  static Stream<String> typed() {
    var in = Objects.requireNonNull(DrugsTest.class.getResourceAsStream("typed.tsv"), "typed.tsv");
    return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
        .lines()
        .filter(line -> !line.isBlank());
  }

  /** At first 198 of the 202 were found; the other four asked once more than was needed. */
  @ParameterizedTest
  @MethodSource("typed")
  void parse_whatPeopleType_findsTheDrugOrAsks(String line) {
    String[] cells = line.split("\t", -1);
    List<TypedDrug> found = DRUGS.parse(cells[0]);
    Set<String> names =
        found.stream()
            .filter(t -> t.entry().isPresent())
            .map(t -> t.entry().orElseThrow().name())
            .collect(Collectors.toSet());

    if (cells[1].equals("?")) {
      assertThat(found).anyMatch(TypedDrug::isAskedAbout);
      assertThat(found).allMatch(t -> t.recognised().isEmpty());
    } else {
      assertThat(names).containsAll(new HashSet<>(Arrays.asList(cells[1].split(" ", -1))));
    }
  }

  @Test
  void parse_threeInOneText_findsAspirinIgnoresMesalazineAndAsksForHeparin() {
    List<TypedDrug> found = DRUGS.parse("ASS 100, 5-ASA 3 g, Heparin");

    assertThat(names("ASS 100, 5-ASA 3 g, Heparin"))
        .containsExactly("aspirin", "mesalazine", "heparin");
    assertThat(found.get(1).entry().orElseThrow().kind()).isEqualTo(DrugEntry.Kind.NOT);
    assertThat(found.get(1).entry().orElseThrow().note()).contains("not aspirin");
    assertThat(found.get(2).intervals()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "ASA III, asa-class",
    "5-ASA, mesalazine",
    "5 ASA, mesalazine",
    "Salazopyrin, sulfasalazine",
    "Marcumar, phenprocoumon",
    "Coumadin, warfarin",
    "MONO EMBOLEX, certoparin",
    "mono-embolex, certoparin",
    "kardegic, aspirin",
    "KARDÉGIC, aspirin"
  })
  void parse_traps_areTold(String typed, String name) {
    assertThat(names(typed)).containsExactly(name);
  }

  @ParameterizedTest
  @CsvSource({
    "Heparin, ",
    "Heparin 5000 IE, ",
    "Heparin i.v., ufh-iv",
    "Heparin 5000 IE s.c., ufh-sc",
    "Clexane, lmwh",
    "Hibor, ",
    "Ibuprofen, nsaid"
  })
  void intervals_ofAName_areThoseOfItsRoute(String typed, String rows) {
    assertThat(DRUGS.parse(typed).getFirst().intervals().orElse(null)).isEqualTo(rows);
  }

  @ParameterizedTest
  @CsvSource({"Xarleto, Xarelto", "Eliqius, Eliquis", "Clopidrogel, clopidogrel"})
  void parse_aSlip_staysUnknownAndNamesTheNearest(String typed, String nearest) {
    TypedDrug found = DRUGS.parse(typed).getFirst();

    assertThat(found.entry()).isEmpty();
    assertThat(found.intervals()).isEmpty();
    assertThat(found.isAskedAbout()).isTrue();
    assertThat(found.nearest()).anyMatch(n -> n.equalsIgnoreCase(nearest));
  }

  @ParameterizedTest
  @ValueSource(strings = {"none", "keine", "-", "?", "nil", "Jointmax", "", "100 mg"})
  void parse_anythingElse_isAskedAboutAndNeverNone(String typed) {
    assertThat(DRUGS.parse(typed)).isNotEmpty().allMatch(TypedDrug::isAskedAbout);
  }

  @Test
  void parse_anUnknownDrugBesideAKnownOne_isNotPassedOver() {
    assertThat(DRUGS.parse("Plavix foobarparin"))
        .anyMatch(t -> t.entry().isEmpty())
        .anyMatch(t -> t.recognised().filter("clopidogrel"::equals).isPresent());
  }

  @Test
  void parse_twoDrugsInOneTablet_areTwo() {
    assertThat(names("DuoPlavin 75/100")).containsExactlyInAnyOrder("clopidogrel", "aspirin");
    assertThat(names("Aggrenox")).containsExactlyInAnyOrder("dipyridamole", "aspirin");
  }

  @Test
  void parse_everyNameOfTheTable_findsItsOwnRow() {
    FACTS.all().stream()
        .filter(f -> f.key().startsWith("drug.") && f.key().endsWith(".names"))
        .filter(f -> FACTS.find(f.key().replace(".names", ".parts")).isEmpty())
        .forEach(
            f ->
                assertThat(f.value().toText().split(", ", -1))
                    .allSatisfy(
                        name ->
                            assertThat(DRUGS.parse(name).getFirst().entry().orElseThrow().name())
                                .as(name)
                                .isEqualTo(f.key().split("\\.", -1)[1])));
  }

  @ParameterizedTest
  @CsvSource({
    "'Clexane 40 mg 1x tgl', 40, MILLIGRAM, 1",
    "'Clexane 0,4', 0.4, NONE, ",
    "'Enoxaparin 4000 IE 1-0-1', 4000, INTERNATIONAL_UNIT, 2",
    "'Eliquis 2,5 mg b.i.d.', 2.5, MILLIGRAM, 2",
    "'Eliquis 5 mg 1-0-1', 5, MILLIGRAM, 2",
    "'Xarelto 20 mg 0-0-1', 20, MILLIGRAM, 1",
    "'Lovenox 40 mg/12h', 40, MILLIGRAM, 2",
    "'Clexane 40 mg 2 mal täglich', 40, MILLIGRAM, 2",
    "'Heparin 12.500 IE', 12500, INTERNATIONAL_UNIT, ",
    "'ASS 100', 100, NONE, ",
    "'ASS seit 2019', , NONE, "
  })
  void parse_aDose_isRead(String typed, Double amount, Dose.Unit unit, Double times) {
    Dose dose = DRUGS.parse(typed).getFirst().dose();

    assertThat(dose.amount().value().stream().boxed().findFirst().orElse(null)).isEqualTo(amount);
    assertThat(dose.amount().unit()).isEqualTo(unit);
    assertThat(dose.times().stream().boxed().findFirst().orElse(null)).isEqualTo(times);
  }

  @Test
  void parse_perKilogramAndAsNeeded_areRead() {
    assertThat(DRUGS.parse("Enoxaparin 1 mg/kg 2x").getFirst().dose().amount().isPerKg()).isTrue();
    assertThat(DRUGS.parse("Ibuprofen 600 b. Bed.").getFirst().dose().isAsNeeded()).isTrue();
    assertThat(DRUGS.dose("5 mg twice daily").times()).hasValue(2);
  }
}
