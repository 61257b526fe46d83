package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.Facts;
import cistern.fact.Status;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class CountTablesTest {

  private static final Differential DIFFERENTIAL = Differential.of(Facts.standard());

  private static Observations heard(Trait... traits) {
    return new Observations(Stream.of(traits).map(t -> new Observation(t, true)).toList());
  }

  /** Three series of MS, 87.7 of 12,253, 93.8 of 1,295 and 95.6 % of 379: capped at 100. */
  @Test
  void counts_bandsHeard_everySeriesWithItsStatusAndTheCap() {
    CountTable ms = table(heard(Trait.BANDS), "ms", "bands");

    assertThat(ms.rows())
        .extracting(CountTable.Row::series)
        .containsExactly("dobson-2013", "simonsen-2020", "ostrava");
    assertThat(ms.rows()).allMatch(r -> r.grounds().status() == Status.READ);
    assertThat(ms.rows().getFirst().count().of()).isEqualTo(12_253);
    assertThat(ms.effective()).isLessThanOrEqualTo(100).isGreaterThan(1);
    assertThat(ms.interval95().upper() - ms.interval95().lower()).isGreaterThan(0.05);
    assertThat(ms.mean()).isBetween(ms.interval95().lower(), ms.interval95().upper());
  }

  /** One series of 1,000 and more may not weigh more than 50. */
  @Test
  void counts_oneSeries_weighsNoMoreThanTheCapForOne() {
    CountTable protein = table(heard(Trait.TOTAL_PROTEIN), "ms", "total-protein");

    assertThat(protein.rows())
        .singleElement()
        .satisfies(r -> assertThat(r.count().of()).isEqualTo(541));
    assertThat(protein.effective()).isCloseTo(50, within(1e-9));
  }

  /** 3 against 30 %: the spread leaves a few persons' weight. */
  @Test
  void counts_seriesThatContradict_weighLittle() {
    assertThat(table(heard(Trait.BANDS), "neurosarcoidosis", "bands").effective()).isLessThan(10);
  }

  @Test
  void counts_onlyWhatWasHeard_jointTablesForAll() {
    assertThat(DIFFERENTIAL.interpret(heard(), Optional.empty(), false).counts()).isEmpty();
    assertThat(DIFFERENTIAL.interpret(heard(Trait.KAPPA_INDEX), Optional.empty(), false).counts())
        .extracting(CountTable::rate)
        .contains("bands", "bands-after-mri", "kappa-index.bands-positive")
        .doesNotContain("leukocytes", "mog-igg");
    assertThat(table(heard(Trait.KAPPA_INDEX), "any", "kappa-index.bands-positive").rows())
        .hasSize(2);
  }

  private static CountTable table(Observations heard, String group, String rate) {
    return DIFFERENTIAL.interpret(heard, Optional.empty(), false).counts().stream()
        .filter(t -> t.group().equals(group) && t.rate().equals(rate))
        .findFirst()
        .orElseThrow();
  }
}
