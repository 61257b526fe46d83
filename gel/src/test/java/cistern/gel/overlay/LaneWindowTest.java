package cistern.gel.overlay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.GelReading.PictureSeen;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.LaneReading.Quality;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.OptionalInt;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Places computed by hand on pictures that are drawn here. */
class LaneWindowTest {

  private static LaneReading lane(double xCentre, double slope) {
    BandMark band = new BandMark(60, 3, 0.4, OptionalInt.empty(), 0.9, "invented");
    return new LaneReading(
        0,
        LaneKind.CSF,
        OptionalInt.of(0),
        xCentre,
        20,
        slope,
        Quality.GOOD,
        List.of(),
        List.of(band),
        false);
  }

  private static GelReading reading(int width, int height, Posture posture, LaneReading lane) {
    return new GelReading(
        new PictureSeen("x", width, height, Polarity.DARK_ON_LIGHT, posture),
        List.of(lane),
        List.of(),
        List.of());
  }

  /** A picture that grows brighter by one grey of 256 a column. */
  private static Picture ramp(int width, int height) {
    char[] samples = new char[width * height];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (char) (256 * (i % width));
    }
    return Picture.of(width, height, samples);
  }

  @Test
  void window_ofOneLane_holdsItAndNothingFarFromIt() throws IOException {
    LaneReading lane = lane(100, 0);
    LaneWindow window = LaneWindow.of(reading(200, 100, Posture.UPRIGHT, lane), List.of(lane));

    // The lane's middle less 0.6 of its width, twice.
    assertThat(window.width()).isEqualTo(24);
    assertThat(window.x(lane, 0, 0)).isEqualTo(12, within(1e-9));
    assertThat(window.x(lane, 0, -0.5)).isEqualTo(2, within(1e-9));
    BufferedImage png = ImageIO.read(new ByteArrayInputStream(window.toPng(ramp(200, 100))));
    assertThat(png.getWidth()).isEqualTo(24);
    assertThat(png.getHeight()).isEqualTo(window.height());
    assertThat(png.getRGB(0, 0) & 0xFF).isEqualTo(88);
  }

  @Test
  void window_ofALeaningLane_followsIt() {
    LaneReading lane = lane(100, 0.1);
    LaneWindow window = LaneWindow.of(reading(200, 100, Posture.UPRIGHT, lane), List.of(lane));

    double top = 50 - window.y(lane.bands().getFirst()) + 10;
    assertThat(window.x(lane, 30, 0) - window.x(lane, 20, 0)).isEqualTo(1, within(1e-9));
    assertThat(top).isNotNegative();
  }

  @Test
  void window_ofAGelOnItsSide_isTurnedUpright() throws IOException {
    LaneReading lane = lane(50, 0);
    LaneWindow window = LaneWindow.of(reading(200, 100, Posture.ACROSS, lane), List.of(lane));

    BufferedImage png = ImageIO.read(new ByteArrayInputStream(window.toPng(ramp(200, 100))));
    assertThat(png.getWidth()).isEqualTo(24);
    assertThat(png.getRGB(3, 1) & 0xFF).isEqualTo((png.getRGB(3, 0) & 0xFF) + 1);
  }

  @Test
  void window_ofAVeryHighPicture_isMadeSmaller() throws IOException {
    LaneReading lane = lane(100, 0);
    LaneWindow window = LaneWindow.of(reading(200, 6000, Posture.UPRIGHT, lane), List.of(lane));

    BufferedImage png = ImageIO.read(new ByteArrayInputStream(window.toPng(ramp(200, 6000))));
    assertThat(window.height()).isGreaterThan(2400);
    assertThat(png.getHeight()).isEqualTo(2400);
  }
}
