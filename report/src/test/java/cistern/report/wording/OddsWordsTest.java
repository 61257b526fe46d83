package cistern.report.wording;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.differential.Observation;
import cistern.differential.Proportion;
import cistern.differential.Trait;
import cistern.differential.Weight;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OddsWordsTest {

  /** The ends go from the lesser to the greater movement, in the words of the sentence. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4|2|9|makes MS 4 times more likely (2 to 9)",
        "0.25|0.1|0.5|makes MS 4 times less likely (2 to 10)",
        "2|0.5|8|makes MS 2 times more likely (2 times less to 8 times more)",
        "0.01|0.00001|0.1|makes MS 100 times less likely (10 to over 1000)",
        "1.02|0.9|1.2|hardly moves MS (1.1 times less to 1.2 times more)"
      })
  void of_anyWeight_saysHowManyTimes(double factor, double low, double high, String words) {
    Weight weight =
        new Weight(
            new Observation(Trait.BANDS, true),
            OptionalDouble.of(Math.log(factor)),
            Optional.of(new Proportion.Ends(Math.log(low), Math.log(high))),
            Optional.empty());

    assertThat(OddsWords.of(weight)).isEqualTo(words);
  }
}
