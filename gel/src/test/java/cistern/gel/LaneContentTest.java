package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.image.Picture;
import cistern.gel.lanes.FoundLane;
import org.junit.jupiter.api.Test;

/** Lanes are where the painter puts them: the first at column 135, each next 90 columns on. */
class LaneContentTest {
  private static final Picture GEL =
      new PaintedGel(135).person(330, 200, 280).nothing().person(360, 300).toPicture();

  private static double content(double column) {
    View view = View.of(GEL, GEL.width() * (long) GEL.height());
    FoundLane lane = view.lanes().placed(column, 56, view.middleRow());
    return new LaneContent(view.plane()).of(lane);
  }

  @Test
  void of_aPlaceOnWhichNothingWasPut_isFarUnderALane() {
    double nothing = content(135 + 2 * 90);

    assertThat(nothing).isLessThan(0.3 * content(135));
    assertThat(nothing).isLessThan(0.3 * content(135 + 90));
  }
}
