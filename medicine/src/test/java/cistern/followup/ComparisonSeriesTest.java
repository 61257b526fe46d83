package cistern.followup;

import static cistern.followup.Built.FACTS;
import static cistern.followup.Built.built;
import static cistern.followup.Built.change;
import static cistern.followup.Built.compare;
import static cistern.followup.Built.remarks;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.analysis.Puncture;
import cistern.bands.BandCounts;
import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonSeriesTest {

  @Nested
  class Series {

    @Test
    void refusal_namesAMissingOrADifferentPerson() {
      Built nobody = built("b", 9);
      nobody.person = Optional.empty();
      Built other = built("c", 9);
      other.person = Optional.of("p-2");
      Puncture first = built("a", 0).puncture();

      assertThat(Comparisons.refusal(List.of(first, nobody.puncture())).orElseThrow())
          .contains("missing");
      assertThat(Comparisons.refusal(List.of(first, other.puncture())).orElseThrow())
          .contains("differs");
      assertThat(Comparisons.refusal(List.of(first, built("b", 9).puncture()))).isEmpty();
      assertThat(remarks(compare(built("a", 0), other))).contains("person-declared");
    }

    @Test
    void compare_filesOutOfOrder_arePutInOrderOfTime() {
      Comparison three = compare(built("late", 200), built("early", 0), built("middle", 50));

      assertThat(three.punctures())
          .extracting(Puncture::workup)
          .containsExactly("early", "middle", "late");
      assertThat(three.steps()).hasSize(2);
      assertThat(three.days()).hasValue(200);
      assertThat(remarks(three)).contains("code=order");
      assertThat(three.person()).contains("p-1");
    }

    @Test
    void compare_missingTime_keepsTheOrderAndHasNoDays() {
      Built later = built("b", 9);
      later.at = Optional.empty();
      Comparison both = compare(built("a", 30), later);

      assertThat(both.days()).isEmpty();
      assertThat(both.punctures()).extracting(Puncture::workup).containsExactly("a", "b");
      assertThat(remarks(both)).contains("days between are not known");
    }

    @Test
    void compare_nothingMeasured_saysThatNothingCompares() {
      assertThat(remarks(compare(new Built("a", 0), new Built("b", 5))))
          .contains("code=nothing-compares", "code=bands-undetermined");
    }
  }

  @Nested
  class Bands {

    @ParameterizedTest
    @CsvSource({
      "6, 6, persistent, 0, 0",
      "6, 9, persistent, 3, 0",
      "6, 0, lost, 0, 6",
      "6, 1, lost, 0, 5",
      "0, 4, gained, 4, 0",
      "1, 4, gained, 3, 0",
      "0, 0, not-demonstrated, 0, 0",
      "0, 1, borderline, 1, 0"
    })
    void compare_counts_areGainedOrLost(int from, int to, String verdict, int gained, int lost) {
      BandChange bands =
          compare(built("a", 0).bands(from, "IEF"), built("b", 9).bands(to, "IEF"))
              .steps()
              .getFirst()
              .bands();

      assertThat(bands.verdict().word()).isEqualTo(verdict);
      assertThat(bands.gained()).hasValue(gained);
      assertThat(bands.lost()).hasValue(lost);
    }

    @Test
    void compare_bandsThatGo_areAPromptAndNeverAVerdict() {
      String said = remarks(compare(built("a", 0).bands(6, "IEF"), built("b", 9).bands(0, "IEF")));

      assertThat(said)
          .contains("acute disseminated encephalomyelitis", "neuromyelitis", "never a verdict")
          .contains("17 of 227", "4 of 48")
          .doesNotContain("absent", "excludes");
    }

    @Test
    void compare_methodAndResultChanged_namesTheMethodFirst() {
      Comparison both = compare(built("a", 0).bands(6, "agarose"), built("b", 9).bands(0, "IEF"));

      assertThat(both.steps().getFirst().bands().verdict())
          .isEqualTo(BandChange.Verdict.METHOD_CHANGED);
      assertThat(both.remarks().getFirst().code()).isEqualTo("band-method-changed");
      assertThat(both.remarks().getFirst().text()).contains("agarose", "IEF", "cut-off 2");
    }

    @Test
    void compare_singleBand_suggestsARepeat() {
      assertThat(remarks(compare(built("a", 0).bands(0, "IEF"), built("b", 9).bands(1, "IEF"))))
          .contains("code=bands-borderline", "A repeat is suggested");
    }

    @Test
    void of_gelReading_carriesItsUncertainty() {
      BandReport gel =
          new BandReport.ReadFromGel(
              "gel.png",
              BandCounts.of(2, 0, 0),
              Optional.of(BandPattern.LOCAL),
              OptionalDouble.of(0.8),
              List.of(0.1, 0.1, 0.6, 0.2),
              Optional.of("reader"));
      BandReport counted =
          new BandReport.Counted(
              BandCounts.of(1, 0, 0),
              Optional.empty(),
              BandReport.Origin.UNKNOWN,
              Optional.empty());

      BandChange change = BandChange.of(BandReading.of(counted, FACTS), BandReading.of(gel, FACTS));

      assertThat(change.chances().orElseThrow().more()).isEqualTo(0.8, within(1e-12));
      assertThat(change.chances().orElseThrow().fewer()).isEqualTo(0.1, within(1e-12));
    }

    @Test
    void of_patternsAlone_haveNoCounts() {
      BandReport positive = new BandReport.Patterned(BandPattern.LOCAL, BandReport.Origin.UNKNOWN);
      BandReport negative = new BandReport.Concluded(false, BandReport.Origin.UNKNOWN);

      BandChange change =
          BandChange.of(BandReading.of(positive, FACTS), BandReading.of(negative, FACTS));

      assertThat(change.verdict()).isEqualTo(BandChange.Verdict.LOST);
      assertThat(change.gained()).isEqualTo(OptionalInt.empty());
      assertThat(change.chances()).isEmpty();
    }
  }
}
