package cistern.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Things done on all processors and taken in order. */
class InOrderTest {

  @Test
  void add_ofMany_takesThemInOrderAndIsNotFarAhead() {
    List<Integer> many = IntStream.range(0, 5000).boxed().toList();
    List<Integer> taken = new ArrayList<>();
    int most = 8 * Runtime.getRuntime().availableProcessors();
    try (InOrder<Integer> all = new InOrder<>(taken::add)) {
      for (int i : many) {
        all.add(() -> i);
        assertThat(i + 1 - taken.size()).isLessThanOrEqualTo(most);
      }
      all.finish();
    }
    assertThat(taken).isEqualTo(many);
  }

  @Test
  void finish_afterWhatFails_isItsFailure() {
    try (InOrder<Integer> all = new InOrder<>(i -> {})) {
      all.add(() -> Integer.parseInt("x"));
      assertThatThrownBy(all::finish).isInstanceOf(NumberFormatException.class);
    }
  }
}
