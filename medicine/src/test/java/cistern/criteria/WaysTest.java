package cistern.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The expected words are ours: what is shared is said once, and no way is lost. */
class WaysTest {

  private static final Item NO_BETTER = Item.NO_BETTER_EXPLANATION;
  private static final Item FLUID = Item.CSF_POSITIVE;
  private static final Item CORTEX = Item.CORTICAL_JUXTACORTICAL;
  private static final Item CORD = Item.SPINAL_CORD;

  private static String say(List<List<Item>> ways) {
    return Ways.say(ways, Item::name);
  }

  @Test
  void say_oneWay_isAList() {
    assertThat(say(List.of(List.of(FLUID)))).isEqualTo("CSF_POSITIVE");
    assertThat(say(List.of(List.of(FLUID, CORTEX, CORD))))
        .isEqualTo("CSF_POSITIVE, CORTICAL_JUXTACORTICAL and SPINAL_CORD");
  }

  @Test
  void say_whatAllShare_once() {
    assertThat(say(List.of(List.of(NO_BETTER, CORTEX), List.of(NO_BETTER, CORD))))
        .isEqualTo("NO_BETTER_EXPLANATION, together with CORTICAL_JUXTACORTICAL, or SPINAL_CORD");
  }

  @Test
  void say_nothingShared_eachWhole() {
    assertThat(say(List.of(List.of(FLUID), List.of(CORTEX, CORD))))
        .isEqualTo("CSF_POSITIVE, or CORTICAL_JUXTACORTICAL and SPINAL_CORD");
  }

  @Test
  void say_oneInsideAnother_isNotEmptied() {
    assertThat(say(List.of(List.of(FLUID), List.of(FLUID, CORD))))
        .isEqualTo("CSF_POSITIVE, or CSF_POSITIVE and SPINAL_CORD");
  }

  @Test
  void say_manyWays_countsTheRest() {
    List<Item> one = List.of(FLUID);
    assertThat(say(List.of(List.of(CORD), List.of(CORTEX), one, one)))
        .endsWith("CSF_POSITIVE, or in one other way");
    assertThat(say(List.of(List.of(CORD), List.of(CORTEX), one, one, one)))
        .endsWith("CSF_POSITIVE, or in 2 other ways");
  }
}
