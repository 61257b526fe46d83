package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.lanes.CommonWidth.Interval;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The median contrast is 0.5 and the step 100; the shares ask for 0.1, at a doubtful end 0.25. */
class RegularityTest {
  private static final Regularity REGULARITY = new Regularity(0.2, 0.5, 0.25, 0.2);
  private static final Interval FAINT = new Interval(10, 60, 0.2);
  private static final Interval NOTHING = new Interval(70, 100, 0.09);
  private static final Interval FIRST = new Interval(110, 160, 0.5);
  private static final Interval SECOND = new Interval(210, 260, 0.5);
  private static final Interval THIRD = new Interval(310, 360, 0.6);
  private static final Interval STREAK = new Interval(500, 550, 0.2);

  @Test
  void check_regularRow_keepsAFaintLane() {
    assertThat(REGULARITY.check(List.of(FAINT, FIRST, SECOND, THIRD), new Extent(5, 700, false)))
        .containsExactly(FAINT, FIRST, SECOND, THIRD);
  }

  @Test
  void check_faintAtTheMembranesEdge_isDropped() {
    assertThat(REGULARITY.check(List.of(FAINT, FIRST, SECOND, THIRD), new Extent(5, 700, true)))
        .containsExactly(FIRST, SECOND, THIRD);
  }

  @Test
  void check_faintAndOutOfStepAtAnEnd_isDropped() {
    assertThat(REGULARITY.check(List.of(FIRST, SECOND, THIRD, STREAK), new Extent(0, 700, false)))
        .containsExactly(FIRST, SECOND, THIRD);
  }

  @Test
  void check_almostNothing_isDroppedAnywhere() {
    assertThat(
            REGULARITY.check(
                List.of(FAINT, NOTHING, FIRST, SECOND, THIRD), new Extent(0, 700, false)))
        .containsExactly(FAINT, FIRST, SECOND, THIRD);
  }

  @Test
  void check_nothing_staysNothing() {
    assertThat(REGULARITY.check(List.of(), new Extent(0, 700, true))).isEmpty();
  }
}
