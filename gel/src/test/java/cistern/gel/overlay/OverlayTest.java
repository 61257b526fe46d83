package cistern.gel.overlay;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.GelFacts;
import cistern.gel.GelReader;
import cistern.gel.image.Picture;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.synthetic.GelMaker;
import cistern.gel.synthetic.Level;
import cistern.gel.synthetic.SyntheticGel;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OverlayTest {
  private static final GelReader READER = new GelReader(GelFacts.standard());

  private static long coloured(BufferedImage image) {
    long n = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int c = image.getRGB(x, y);
        n += Math.abs((c >> 16 & 255) - (c & 255)) > 60 ? 1 : 0;
      }
    }
    return n;
  }

  @Test
  void toPng_namedGel_holdsMarksInTheColoursOfTheFluids(@TempDir Path folder) throws IOException {
    SyntheticGel gel = GelMaker.of(Level.MEDIUM, 3);
    Picture picture = gel.toPicture();
    GelReading reading = READER.read(picture, "g", gel.toPlan());
    Path file = folder.resolve("overlay.png");
    OverlayFile.toPng(picture, reading, file);
    BufferedImage drawn = ImageIO.read(file.toFile());
    assertThat(drawn.getWidth()).isEqualTo(1400);
    assertThat(coloured(drawn)).isGreaterThan(2_000);
  }

  /** Names stand beside the lanes: what lies there is not in the overlay. */
  @Test
  void of_aGelWithALabelBesideItsLanes_leavesTheLabelOut() {
    SyntheticGel gel = GelMaker.of(Level.EASY, 3);
    Picture picture = gel.toPicture();
    GelReading reading = READER.read(picture, "g", gel.toPlan());
    double right =
        gel.lanes().stream().mapToDouble(l -> l.xCentre() + l.width()).max().orElseThrow();
    Picture named = withLabel(picture, (int) right + 10);

    assertThat(Overlay.of(named, reading).getRGB(0, 0, 1400, 200, null, 0, 1400))
        .isEqualTo(Overlay.of(picture, reading).getRGB(0, 0, 1400, 200, null, 0, 1400));
  }

  private static Picture withLabel(Picture picture, int fromColumn) {
    char[] samples = new char[picture.width() * picture.height()];
    for (int i = 0; i < samples.length; i++) {
      int x = i % picture.width();
      int y = i / picture.width();
      samples[i] = x > fromColumn ? (char) (y % 7 * 9_000) : picture.at(x, y);
    }
    return Picture.of(picture.width(), picture.height(), samples);
  }

  @Test
  void of_noLanes_isStillAPicture() {
    char[] grey = new char[300 * 200];
    Picture picture = Picture.of(300, 200, grey);
    GelReading reading = READER.read(picture, "g", LanePlan.NONE);
    assertThat(Overlay.of(picture, reading).getWidth()).isEqualTo(1400);
  }
}
