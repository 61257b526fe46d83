package cistern.gel.membrane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.GelFacts;
import cistern.gel.image.Picture;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

/** Every expected number is what the test itself painted. */
class SheetFinderTest {
  private static final SheetFinder FINDER = new SheetFinder(GelFacts.standard());

  private static Picture picture(DoubleBinaryOperator light) {
    char[] samples = new char[360 * 300];
    for (int y = 0; y < 300; y++) {
      for (int x = 0; x < 360; x++) {
        samples[y * 360 + x] = (char) Math.round(Picture.WHITE * light.applyAsDouble(x, y));
      }
    }
    return Picture.of(360, 300, samples);
  }

  @Test
  void find_surroundWhoseLightFallsOff_isFound() {
    Sheet sheet =
        FINDER.find(
            picture(
                (x, y) -> {
                  boolean isGel = x >= 30 && x < 320 && y >= 25 && y < 270;
                  return isGel ? 0.4 : 0.9 - 0.15 * x / 360;
                }));

    assertThat(sheet.left().at()).isCloseTo(30, within(2.0));
    assertThat(sheet.right().at()).isCloseTo(320, within(2.0));
    assertThat(sheet.top().at()).isCloseTo(25, within(2.0));
    assertThat(sheet.bottom().at()).isCloseTo(270, within(2.0));
  }

  @Test
  void find_surroundOnThreeSides_reachesThePictureOnTheFourth() {
    Sheet sheet = FINDER.find(picture((x, y) -> x >= 30 && y >= 25 && y < 270 ? 0.4 : 0.9));

    assertThat(sheet.left().at()).isCloseTo(30, within(2.0));
    assertThat(sheet.right().at()).isEqualTo(360);
    assertThat(sheet.top().at()).isCloseTo(25, within(2.0));
  }

  @Test
  void appearance_runsNearlyAsAlikeEitherWay_isUpright() {
    assertThat(posture(1.3)).isEqualTo(Posture.UPRIGHT);
    assertThat(posture(2.5)).isEqualTo(Posture.ACROSS);
  }

  /** Of a picture with lines from top to bottom and crosswise lines so many times as strong. */
  private static Posture posture(double crosswise) {
    Picture lines =
        picture(
            (x, y) ->
                0.6
                    + 0.05 * Math.sin(2 * Math.PI * x / 12)
                    + 0.05 * crosswise * Math.sin(2 * Math.PI * y / 10));
    return Appearance.of(lines, Sheet.of(360, 300)).posture();
  }
}
