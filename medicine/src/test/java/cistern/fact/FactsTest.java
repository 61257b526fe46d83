package cistern.fact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FactsTest {

  private static final Facts FACTS = Facts.standard();

  @Test
  void standard_everyFact_hasSourceUnitAndStatus() {
    assertThat(FACTS.all()).hasSizeGreaterThan(150);
    for (Fact fact : FACTS.all()) {
      assertThat(fact.source()).as(fact.key()).isNotBlank();
      if (fact.value() instanceof FactValue.Figure) {
        assertThat(fact.unit()).as(fact.key()).isNotBlank();
      }
      assertThat(fact.isChanged()).isFalse();
    }
  }

  /** No table is exempt: words in the place of a key are refused where the table is read. */
  @Test
  void standard_everyFact_citesAnEntryUnlessItsStatusSaysThatNothingWasLookedUp() {
    for (Fact fact : FACTS.all()) {
      switch (fact.status()) {
        case READ, DERIVED, LOCAL ->
            assertThat(fact.cited().references()).as(fact.key()).isNotEmpty();
        case SECOND_HAND ->
            assertThat(fact.cited().words()).as(fact.key()).contains(", as given in ");
        case COMMON_PRACTICE ->
            assertThat(fact.source()).as(fact.key()).startsWith("common practice");
        case PROJECT_RULE -> assertThat(fact.source()).as(fact.key()).startsWith("project rule");
        case MEMORY -> assertThat(fact.source()).as(fact.key()).startsWith("from memory");
      }
    }
  }

  @Test
  void standard_keysFixedFromOutside_areThere() {
    for (String key :
        List.of(
            "albumin-quotient.limit-rule",
            "bands.cut-off",
            "igg-index.upper",
            "kappa-index.upper",
            "molar-mass.albumin",
            "molar-mass.igg",
            "molar-mass.glucose",
            "molar-mass.lactate",
            "cv.albumin.csf",
            "cv.igg.serum",
            "cv.kappa-flc.csf")) {
      assertThat(FACTS.find(key)).as(key).isPresent();
    }
  }

  @Test
  void with_policy_keepsBothValuesAndTheLocalSource() {
    Facts local =
        FACTS.with(
            new Policy(
                "ours",
                Map.of(
                    "igg-index.upper", new Policy.Change(new FactValue.Figure(0.66), "memo 4"))));
    Fact fact = local.fact("igg-index.upper");

    assertThat(local.number("igg-index.upper")).isEqualTo(0.66);
    assertThat(fact.standard()).contains(new FactValue.Figure(0.70));
    assertThat(fact.status()).isEqualTo(Status.LOCAL);
    assertThat(fact.citation()).isEqualTo("memo 4");
    assertThat(local.policy()).contains("ours");
    assertThat(FACTS.number("igg-index.upper")).isEqualTo(0.70);
  }

  @Test
  void fact_ofAnUnknownKey_isAProgrammingError() {
    assertThatIllegalArgumentException().isThrownBy(() -> FACTS.fact("no-such-fact"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FACTS.number("albumin-quotient.limit-rule"));
  }

  @Test
  void of_twoTablesWithOneKey_isAProgrammingError() {
    Fact fact =
        new Fact(
            "k",
            new FactValue.Figure(1),
            "1",
            Status.READ,
            Provenance.ofWords("source"),
            "",
            Optional.empty());
    FactTable table = new FactTable("t", "1", List.of(fact));

    assertThatIllegalStateException().isThrownBy(() -> Facts.of(List.of(table, table)));
    assertThatIllegalStateException().isThrownBy(() -> Facts.of(List.of(table)).with(table));
  }

  @Test
  void with_furtherTables_addsThem() {
    Fact fact =
        new Fact(
            "gel.k",
            new FactValue.Word("w"),
            "",
            Status.READ,
            Provenance.ofWords("source"),
            "p",
            Optional.empty());
    Facts more = FACTS.with(new FactTable("gel.tsv", "3", List.of(fact)));

    assertThat(more.word("gel.k")).isEqualTo("w");
    assertThat(more.version()).endsWith("gel 3");
    assertThat(fact.citation()).isEqualTo("source, p");
  }

  @Test
  void read_ofAMissingOrMalformedTable_isAProgrammingError() {
    assertThatIllegalStateException()
        .isThrownBy(() -> FactTable.read(FactsTest.class, "no-such.tsv"));
    assertThatIllegalStateException()
        .isThrownBy(() -> FactTable.read(FactsTest.class, "headless.tsv"));
    assertThatIllegalStateException()
        .isThrownBy(() -> FactTable.read(FactsTest.class, "five-cells.tsv"))
        .withMessageContaining("five-cells.tsv:3");
    assertThatIllegalStateException()
        .isThrownBy(() -> FactTable.read(FactsTest.class, "no-status.tsv"));
    assertThatIllegalStateException()
        .isThrownBy(() -> FactTable.read(FactsTest.class, "worded.tsv"))
        .withMessageContaining("a doctor's handbook");
  }

  @Test
  void grounds_ofSeveralFacts_haveTheWeakestStatusAndAllSources() {
    Grounds grounds = FACTS.grounds("igg-index.upper", "reiber-1994.igg.upper.c");

    assertThat(grounds.status()).isEqualTo(Status.MEMORY);
    assertThat(grounds.sources()).hasSize(2);
    assertThat(Grounds.MEASURED.status()).isEqualTo(Status.READ);
    assertThat(grounds.and(grounds)).isEqualTo(grounds);
  }

  @Test
  void weaker_ofTwoStatuses_isTheLaterOne() {
    assertThat(Status.READ.weaker(Status.LOCAL)).isEqualTo(Status.LOCAL);
    assertThat(Status.MEMORY.weaker(Status.PROJECT_RULE)).isEqualTo(Status.MEMORY);
    assertThat(Status.parse("second-hand")).contains(Status.SECOND_HAND);
    assertThat(Status.parse("hearsay")).isEmpty();
  }

  @Test
  void toText_ofValues_isWhatAPersonWrites() {
    assertThat(new FactValue.Figure(24).toText()).isEqualTo("24");
    assertThat(new FactValue.Figure(0.7).toText()).isEqualTo("0.7");
    assertThat(FactValue.parse("fixed")).isEqualTo(new FactValue.Word("fixed"));
    assertThatIllegalArgumentException().isThrownBy(() -> new FactValue.Figure(Double.NaN));
  }
}
