package cistern.gel.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.lanes.CommonWidth.Interval;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Shares of the median contrast 0.5: 0.2 asks for 0.1, 0.5 at the edge for 0.25. */
class RegularityTest {
  private static final Regularity REGULARITY = new Regularity(0.2, 0.5, 0.25);
  private static final Interval EDGE = new Interval(10, 60, 0.2);
  private static final Interval FAINT = new Interval(110, 160, 0.2);
  private static final Interval NOTHING = new Interval(210, 260, 0.09);
  private static final Interval FIRST = new Interval(310, 360, 0.5);
  private static final Interval SECOND = new Interval(410, 460, 0.5);
  private static final Interval THIRD = new Interval(510, 560, 0.6);
  private static final List<Interval> ALL = List.of(EDGE, FAINT, NOTHING, FIRST, SECOND, THIRD);

  @Test
  void check_faintAtTheMembranesEdge_isDropped() {
    assertThat(REGULARITY.check(ALL, new Extent(5, 700, true)))
        .containsExactly(FAINT, FIRST, SECOND, THIRD);
  }

  @Test
  void check_faintAtThePicturesEdge_isKept() {
    assertThat(REGULARITY.check(ALL, new Extent(5, 700, false)))
        .containsExactly(EDGE, FAINT, FIRST, SECOND, THIRD);
  }

  @Test
  void check_nothing_staysNothing() {
    assertThat(REGULARITY.check(List.of(), new Extent(0, 700, true))).isEmpty();
  }
}
