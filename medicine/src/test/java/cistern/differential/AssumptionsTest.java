package cistern.differential;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.measurement.Answer;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AssumptionsTest {

  @ParameterizedTest
  @CsvSource({"0,0,true", "1,1,true", "0,1,false", "0.3,0.3,false"})
  void of_priorOfNoneOrAll_saysThatNothingMovesIt(double low, double high, boolean isSaid) {
    assertThat(
            Assumptions.of(Optional.of(new Prior(low, high, Answer.NO))).stream()
                .anyMatch(a -> a.contains("cannot be moved by any finding")))
        .isEqualTo(isSaid);
  }
}
