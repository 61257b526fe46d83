package cistern.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.measurement.Analyte;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import cistern.report.InventedPuncture;
import cistern.report.WeighedCase;
import cistern.report.patient.PatientResultTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChartCommentTest {

  private static final InventedPuncture USUAL =
      InventedPuncture.withLocalSynthesis()
          .with(Sample.csf(Analyte.LEUKOCYTES), Interval.of(9))
          .with(Sample.csf(Analyte.LYMPHOCYTES), Interval.of(0.9))
          .with(Sample.csf(Analyte.TOTAL_PROTEIN), Interval.of(410))
          .withBands(6, 0);

  static Stream<InventedPuncture> punctures() {
    return Stream.concat(PatientResultTest.punctures(), Stream.of(USUAL));
  }

  private static int words(String text) {
    return text.split(" ", -1).length;
  }

  @ParameterizedTest
  @MethodSource("punctures")
  void of_anyPuncture_isOneParagraphOfLatin1(InventedPuncture puncture) {
    String comment = ChartComment.of(puncture.interpretation());

    assertThat(StandardCharsets.ISO_8859_1.newEncoder().canEncode(comment)).isTrue();
    assertThat(comment).doesNotContain("\n", "  ", "κ", "⁻", "McDonald", "17-").endsWith(".");
    assertThat(words(comment)).isLessThanOrEqualTo(ChartComment.MOST_WORDS);
  }

  /** The project's contract: at least 60 words from six values on. */
  @ParameterizedTest
  @MethodSource("punctures")
  void of_sixValuesOrMore_saysEnough(InventedPuncture puncture) {
    var said = puncture.interpretation();
    if (said.panel().panel().results().size() >= 6) {
      assertThat(words(ChartComment.of(said))).isGreaterThanOrEqualTo(ChartComment.LEAST_WORDS);
    }
  }

  @Test
  void of_theUsualCase_followsTheOrderOfTheTrade() {
    assertThat(ChartComment.of(WeighedCase.usual(USUAL)))
        .containsSubsequence(
            "CSF, draw time not given",
            "9 leukocytes/µL (raised; 90 % lymphocytes)",
            "Total protein 410 mg/L (normal)",
            "QAlb 5.24 x 10^-3 (limit",
            "barrier function normal",
            "ntrathecal IgG",
            "Oligoclonal bands type 2: positive (6 CSF-restricted",
            "Kappa index",
            "Summary: humoral intrathecal immune response",
            "Criteria: 2017 met; 2024 met.");
  }

  @Test
  void plain_signsOfTheTrade_haveAPlainForm() {
    assertThat(ChartComment.plain("κ ≥ 6.1 × 10⁻³ – λ’s “−9” 🧪"))
        .isEqualTo("kappa >= 6.1 x 10^-3 - lambda's \"-9\"");
  }
}
