package cistern.report.patient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.fact.Facts;
import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.report.InventedPuncture;
import cistern.report.Parsed;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class PatientResultTest {

  private static final InventedPuncture PANEL_2 = InventedPuncture.withLocalSynthesis();

  /** Punctures of every answer. */
  public static Stream<InventedPuncture> punctures() {
    return Stream.of(
        InventedPuncture.empty().withId("nothing"),
        PANEL_2.withId("suggested"),
        PANEL_2.withBands(6, 0).withId("demonstrated"),
        PANEL_2.with(Analyte.IGG, 30, 11_000).withBelow(Analyte.KAPPA, 0.1).withBands(0, 0),
        PANEL_2.with(Analyte.IGG, 30, 11_000).withBelow(Analyte.KAPPA, 0.1).withBands(1, 0),
        PANEL_2.with(Analyte.ALBUMIN, 42_000, 220).withBands(6, 0).withId("swapped"),
        PANEL_2
            .with(Analyte.ALBUMIN, 900, 38_000)
            .with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(40))
            .withId("barrier"));
  }

  private static Parsed page(InventedPuncture puncture) {
    return Parsed.of(
        Page.of("Cistern", Facts.standard())
            .toPaper(puncture.interpretation(), Audience.PATIENT, ""));
  }

  private static List<String> prose(Parsed page) {
    return page.texts("//section//p[not(@class='caption')] | //section/h2 | //section//li");
  }

  @Nested
  class Published {

    /** "The cat sat on the mat." has 6 words, 6 syllables: −1.45, counted by hand. */
    @Test
    void readingGrade_ofAShortSentence_isAsCountedByHand() {
      assertThat(ReadingGrade.of(List.of("The cat sat on the mat.")))
          .isCloseTo(0.39 * 6 + 11.8 - 15.59, within(1e-9));
    }

    /** Syllables counted by hand. */
    @Test
    void syllables_ofCommonWords_areAsCountedByHand() {
      assertThat(Stream.of("fluid", "spine", "looked", "multiple", "results", "system", "tested"))
          .extracting(ReadingGrade::syllables)
          .containsExactly(1, 1, 1, 3, 2, 2, 2);
    }
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void page_anyResult_isReadAtTheAgeOfTwelve(InventedPuncture puncture) {
    assertThat(ReadingGrade.of(prose(page(puncture)))).isLessThan(6.5);
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void page_anyResult_hasNoChanceNoNumberAndNoOtherDisease(InventedPuncture puncture) {
    String prose = String.join(" ", prose(page(puncture))).toLowerCase(Locale.ROOT);
    assertThat(prose)
        .doesNotContainPattern("[0-9%]")
        .doesNotContain("probab", "chance", "likel", "risk", "cancer", "tumour", "infection")
        .doesNotContain("neuromyelitis", "mog ", "sarcoid", "borrelia", "lyme", "syphilis", "lupus")
        .doesNotContain("stop", "start taking");
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void page_anyResult_saysWhatWasTestedFoundMeantNotMeantAndWhomToAsk(InventedPuncture puncture) {
    assertThat(page(puncture).texts("//h2"))
        .containsExactly(
            "What was tested",
            "What was found",
            "What this can mean",
            "What it does not tell us",
            "What happens next",
            "Call us at once, day or night, if you have",
            "Whom to ask");
    assertThat(page(puncture).texts("//section[count(p) + count(ul) = 0]")).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void page_anyResult_isMarkedAsADraft(InventedPuncture puncture) {
    assertThat(page(puncture).texts("//*[@class='draft']"))
        .containsExactly("Draft. A doctor must check and sign this page before you use it.");
  }

  @Test
  void found_bandsInCsfAlone_saysThatSignsWereFound() {
    assertThat(prose(page(PANEL_2.withBands(6, 0))))
        .contains("We found signs that your immune system is busy in the brain or spine.")
        .anyMatch(p -> p.startsWith("We also looked for bands."));
  }

  @Test
  void found_nothing_neverSaysThatThereIsNone() {
    InventedPuncture negative =
        PANEL_2.with(Analyte.IGG, 30, 11_000).withBelow(Analyte.KAPPA, 0.1).withBands(0, 0);
    assertThat(prose(page(negative)))
        .contains("We did not find signs that your immune system is busy in the brain or spine.")
        .contains("Some people with multiple sclerosis (MS) have a result like this too.");
  }

  @Test
  void found_noAnswer_saysSo() {
    assertThat(prose(page(InventedPuncture.empty())))
        .contains("This test did not give a clear answer.")
        .doesNotContain("We took some of your blood too, so that we can compare the two.");
  }

  @Test
  void found_leakAndCells_areTold() {
    assertThat(prose(page(punctures().toList().getLast())))
        .contains("More protein than usual has passed from your blood into the fluid.")
        .contains("There were more white blood cells in the fluid than usual.");
  }

  @Test
  void found_doubtedValue_saysThatAResultNeedsASecondLook() {
    assertThat(prose(page(PANEL_2.with(Analyte.ALBUMIN, 42_000, 220))))
        .contains("Some of the results need a second look. Your doctor knows which ones.");
  }
}
