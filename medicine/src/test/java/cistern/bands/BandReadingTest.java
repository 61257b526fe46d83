package cistern.bands;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.bands.BandReport.Origin;
import cistern.fact.FactValue;
import cistern.fact.Facts;
import cistern.fact.Policy;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Patterns of Andersson 1994, JNNP 57:897; cut-off two, two laboratories' handbooks. */
class BandReadingTest {

  private static final Facts FACTS = Facts.standard();

  @Nested
  class Published {

    @ParameterizedTest
    @CsvSource({
      "0, 0, NORMAL, NEGATIVE",
      "1, 0, NORMAL, BORDERLINE",
      "2, 0, LOCAL, POSITIVE",
      "8, 0, LOCAL, POSITIVE",
      "2, 3, LOCAL_AND_SYSTEMIC, POSITIVE",
      "1, 3, SYSTEMIC, BORDERLINE",
      "0, 3, SYSTEMIC, NEGATIVE"
    })
    void of_counts_givesPatternAndVerdict(
        int csfOnly, int shared, BandPattern pattern, BandVerdict verdict) {
      BandReading reading = BandReading.of(counted(csfOnly, shared, Optional.empty()), FACTS);

      assertThat(reading.pattern()).contains(pattern);
      assertThat(reading.verdict()).isEqualTo(verdict);
      assertThat(reading.isConfirmed()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"1, NEGATIVE", "2, POSITIVE", "3, POSITIVE", "4, NEGATIVE", "5, NEGATIVE"})
    void of_patternAlone_givesVerdictWithoutCounts(int number, BandVerdict verdict) {
      BandReading reading =
          BandReading.of(
              new BandReport.Patterned(BandPattern.parse(number).orElseThrow(), Origin.UNKNOWN),
              FACTS);

      assertThat(reading.verdict()).isEqualTo(verdict);
      assertThat(reading.counts()).isEqualTo(BandCounts.NONE);
    }
  }

  @Test
  void of_resultAlone_hasNoPattern() {
    BandReading reading = BandReading.of(new BandReport.Concluded(true, Origin.UNKNOWN), FACTS);

    assertThat(reading.verdict()).isEqualTo(BandVerdict.POSITIVE);
    assertThat(reading.pattern()).isEmpty();
    assertThat(BandReading.of(new BandReport.Concluded(false, Origin.UNKNOWN), FACTS).verdict())
        .isEqualTo(BandVerdict.NEGATIVE);
  }

  @Test
  void of_nothing_isUndetermined() {
    BandReading reading = BandReading.of(new BandReport.NotReported(), FACTS);

    assertThat(reading.verdict()).isEqualTo(BandVerdict.UNDETERMINED);
    assertThat(reading.isReported()).isFalse();
    assertThat(reading.isConfirmed()).isFalse();
  }

  @Test
  void of_countsWithoutShared_hasNoPatternButAVerdict() {
    BandReport report =
        new BandReport.Counted(
            new BandCounts(OptionalInt.of(5), OptionalInt.empty(), OptionalInt.empty()),
            Optional.empty(),
            Origin.UNKNOWN,
            Optional.empty());

    assertThat(BandReading.of(report, FACTS).pattern()).isEmpty();
    assertThat(BandReading.of(report, FACTS).verdict()).isEqualTo(BandVerdict.POSITIVE);
  }

  @Test
  void of_countsBesideALadder_keepsTheLadder() {
    BandReading reading = BandReading.of(counted(3, 6, Optional.of(BandPattern.LADDER)), FACTS);

    assertThat(reading.pattern()).contains(BandPattern.LADDER);
    assertThat(reading.verdict()).isEqualTo(BandVerdict.POSITIVE);
    assertThat(reading.contradictedPattern()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "6, 0, 1, true",
    "6, 0, 2, false",
    "0, 0, 2, true",
    "1, 0, 2, false",
    "0, 3, 4, false"
  })
  void contradictedPattern_onlyWhereOneSaysLocal_isNamed(
      int csfOnly, int shared, int named, boolean isContradicted) {
    BandReading reading = BandReading.of(counted(csfOnly, shared, BandPattern.parse(named)), FACTS);

    assertThat(reading.contradictedPattern().isPresent()).isEqualTo(isContradicted);
    assertThat(reading.pattern()).isEqualTo(BandReading.pattern(reading.counts(), 2));
  }

  @Test
  void of_countsUnderAHigherCutOff_areBorderline() {
    Facts local =
        FACTS.with(
            new Policy(
                "three",
                Map.of("bands.cut-off", new Policy.Change(new FactValue.Figure(3), "protocol"))));

    assertThat(BandReading.of(counted(2, 0, Optional.empty()), local).verdict())
        .isEqualTo(BandVerdict.BORDERLINE);
    assertThat(BandReading.of(counted(3, 0, Optional.empty()), local).cutOff()).isEqualTo(3);
  }

  @Test
  void of_gel_isConfirmedOnlyByAPerson() {
    BandReport.ReadFromGel read = gel(Optional.empty());

    assertThat(BandReading.of(read, FACTS).isConfirmed()).isFalse();
    assertThat(BandReading.of(read, FACTS).verdict()).isEqualTo(BandVerdict.POSITIVE);
    assertThat(BandReading.of(gel(Optional.of("a reader")), FACTS).isConfirmed()).isTrue();
  }

  @Test
  void of_aGelThatNobodyRead_isUndeterminedUnlessAPersonCounted() {
    BandReport.Counted counted = (BandReport.Counted) counted(4, 0, Optional.empty());
    BandReport unread =
        new BandReport.GelNamed("gel.png", List.of(), 0, Optional.empty(), Optional.empty());
    BandReport edited =
        new BandReport.GelNamed("gel.png", List.of(), 0, Optional.empty(), Optional.of(counted));

    assertThat(BandReading.of(unread, FACTS).verdict()).isEqualTo(BandVerdict.UNDETERMINED);
    assertThat(BandReading.of(unread, FACTS).isConfirmed()).isFalse();
    assertThat(BandReading.of(unread, FACTS).isReported()).isTrue();
    assertThat(BandReading.of(edited, FACTS).verdict()).isEqualTo(BandVerdict.POSITIVE);
  }

  private static BandReport.ReadFromGel gel(Optional<String> by) {
    return new BandReport.ReadFromGel(
        "gel.png",
        BandCounts.of(4, 0, 0),
        Optional.of(BandPattern.LOCAL),
        OptionalDouble.of(0.97),
        List.of(0.0, 0.03, 0.97),
        by);
  }

  private static BandReport counted(int csfOnly, int shared, Optional<BandPattern> pattern) {
    return new BandReport.Counted(
        BandCounts.of(csfOnly, shared, 0), pattern, Origin.UNKNOWN, Optional.empty());
  }
}
