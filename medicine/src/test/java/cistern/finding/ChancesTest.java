package cistern.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChancesTest {

  @Nested
  class Published {

    @Test
    void toLieAbove_fortyPercent_isTheSentenceOfTheContract() {
      assertThat(Chances.toLieAbove(0.4))
          .isEqualTo("seen from this measurement, 4 chances in 10 to lie above");
    }
  }

  @Nested
  class Laws {

    @ParameterizedTest
    @CsvSource({
      "0, less than 1 chance in 1000",
      "0.0009, less than 1 chance in 1000",
      "0.001, 1 chance in 1000",
      "0.0056, 6 chances in 1000",
      "0.0096, 1 chance in 100",
      "0.04, 4 chances in 100",
      "0.0949, 9 chances in 100",
      "0.096, 1 chance in 10",
      "0.5, 5 chances in 10",
      "0.9, 9 chances in 10",
      "0.92, 92 chances in 100",
      "0.994, 994 chances in 1000",
      "0.9989, 999 chances in 1000",
      "1, more than 999 chances in 1000"
    })
    void of_aProbability_isWholeChances(double probability, String words) {
      assertThat(Chances.of(probability)).isEqualTo(words);
    }

    @Test
    void of_anyProbability_isNeverNoneAndNeverAll() {
      for (int i = 0; i <= 100_000; i++) {
        assertThat(Chances.of(i / 100_000.0))
            .doesNotMatch("0 chances.*")
            .isNotIn("10 chances in 10", "100 chances in 100", "1000 chances in 1000");
      }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 1.1, Double.NaN})
    void of_noProbability_isRefused(double wrong) {
      assertThatThrownBy(() -> Chances.of(wrong)).isInstanceOf(IllegalArgumentException.class);
    }
  }
}
