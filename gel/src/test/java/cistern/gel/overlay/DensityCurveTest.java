package cistern.gel.overlay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.GelFacts;
import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Densities computed by hand on pictures that are drawn here, 200 columns by 100 rows. */
class DensityCurveTest {

  private static final BandMark BAND = new BandMark(60, 5, 0.4, OptionalInt.empty(), 1, "drawn");

  private static LaneReading lane(double xCentre, double slope) {
    return new LaneReading(
        0,
        LaneKind.CSF,
        OptionalInt.of(0),
        xCentre,
        30,
        slope,
        Quality.GOOD,
        List.of(),
        List.of(BAND),
        false);
  }

  /** Light of a share of white everywhere, and of another on the rows of the band. */
  private static Picture picture(double ground, double band) {
    char[] samples = new char[200 * 100];
    for (int i = 0; i < samples.length; i++) {
      int row = i / 200;
      boolean isBand = row >= 58 && row <= 62;
      samples[i] = (char) Math.round(Picture.WHITE * (isBand ? band : ground));
    }
    return Picture.of(200, 100, samples);
  }

  private static DensityCurve curve(
      Picture picture, LaneReading lane, Polarity polarity, Posture posture) {
    GelReading reading =
        new GelReading(
            new PictureSeen("x", picture.width(), picture.height(), polarity, posture),
            List.of(lane),
            List.of(),
            List.of());
    return DensityCurve.of(
        LaneWindow.of(reading, List.of(lane)), picture, lane, GelFacts.standard());
  }

  /** The window begins at a fifth of the height, so that row 60 is entry 40. */
  @Test
  void curve_ofADarkBand_risesWhereTheBandIs() {
    DensityCurve curve =
        curve(picture(0.5, 0.05), lane(100, 0), Polarity.DARK_ON_LIGHT, Posture.UPRIGHT);

    // −log10 of the light, the samples' floor of 0.004 of white added to it.
    assertThat(curve.od()).hasSize(60);
    assertThat(curve.od().get(40)).isCloseTo(-Math.log10(0.054 / 1.004), within(1e-3));
    assertThat(curve.od().get(30)).isCloseTo(-Math.log10(0.504 / 1.004), within(1e-3));
  }

  @Test
  void curve_ofALightBand_risesToo() {
    DensityCurve curve =
        curve(picture(0.5, 0.95), lane(100, 0), Polarity.LIGHT_ON_DARK, Posture.UPRIGHT);

    assertThat(curve.od().get(40)).isCloseTo(-Math.log10(0.054 / 1.004), within(1e-3));
  }

  @Test
  void curve_ofAGelOnItsSide_isTheSame() {
    Picture upright = picture(0.5, 0.05);

    assertThat(curve(upright.toTransposed(), lane(100, 0), Polarity.DARK_ON_LIGHT, Posture.ACROSS))
        .isEqualTo(curve(upright, lane(100, 0), Polarity.DARK_ON_LIGHT, Posture.UPRIGHT));
  }

  /** A lane that leans by one column in five rows, and a thin band that lies square to it. */
  @Test
  void curve_ofALeaningLane_followsItsRows() {
    char[] samples = new char[200 * 100];
    for (int i = 0; i < samples.length; i++) {
      int row = i / 200;
      double along = row + 0.2 * (i % 200 - 100);
      samples[i] = (char) (Math.abs(along - 60) <= 0.7 ? 0 : Picture.WHITE / 2);
    }
    DensityCurve curve =
        curve(
            Picture.of(200, 100, samples), lane(100, 0.2), Polarity.DARK_ON_LIGHT, Posture.UPRIGHT);

    assertThat(curve.od().get(40)).isGreaterThan(2);
    assertThat(curve.od().get(36)).isLessThan(0.4);
    assertThat(curve.od().get(44)).isLessThan(0.4);
  }

  @Test
  void curve_atThePicturesEdge_staysInThePicture() {
    assertThat(curve(picture(0.5, 0.5), lane(2, 0), Polarity.DARK_ON_LIGHT, Posture.UPRIGHT).od())
        .allMatch(d -> Math.abs(d + Math.log10(0.504 / 1.004)) < 1e-3);
  }
}
