package cistern.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was found is not looked for again, up to a bound. */
class KeptTest {

  @Test
  void of_sameKeyAgain_looksOnce() {
    Kept<Integer, Integer> squares = new Kept<>();
    List<Integer> looked = new ArrayList<>();

    for (int i = 0; i < 3; i++) {
      int square =
          squares.of(
              7,
              k -> {
                looked.add(k);
                return k * k;
              });
      assertThat(square).isEqualTo(49);
    }

    assertThat(looked).containsExactly(7);
  }

  @Test
  void of_moreKeysThanAreKept_looksForTheLastEachTime() {
    Kept<Integer, Integer> same = new Kept<>();
    for (int i = 0; i < 5_000; i++) {
      assertThat(same.of(i, k -> k)).isEqualTo(i);
    }
    List<Integer> looked = new ArrayList<>();

    same.of(
        4_999,
        k -> {
          looked.add(k);
          return k;
        });
    same.of(
        0,
        k -> {
          looked.add(k);
          return k;
        });

    assertThat(looked).containsExactly(4_999);
  }
}
