package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import cistern.gel.image.Picture;
import cistern.gel.image.PictureFile;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.PairReading;
import cistern.gel.synthetic.PairTruth;
import cistern.gel.synthetic.SyntheticGel;
import java.awt.Image;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every expected number is the ground truth of an invented gel. */
class ExampleGelsTest {
  private static final Path EXAMPLES =
      Path.of(System.getProperty("cistern.root", ".."), "examples");

  @ParameterizedTest
  @EnumSource
  void file_ofAnExample_isWhatTheGeneratorMakes(ExampleGel example) throws IOException {
    Path file = EXAMPLES.resolve(example.file());
    Picture stored = new PictureFile(GelFacts.standard()).read(file);
    Picture made = example.make().toPicture();
    assertThat(Files.size(file)).isLessThan(300_000);
    assertThat(stored.width()).isEqualTo(made.width());
    for (int y = 0; y < made.height(); y++) {
      for (int x = 0; x < made.width(); x++) {
        assertThat(stored.at(x, y) >> 8).isEqualTo(made.at(x, y) >> 8);
      }
    }
  }

  /** From so many bands on, one more or less is as good: two that touch may be one. */
  private static final int MANY = 5;

  @ParameterizedTest
  @EnumSource
  void read_anExample_isItsTruth(ExampleGel example) throws IOException {
    SyntheticGel truth = example.make();
    GelReading reading =
        new GelReader(GelFacts.standard()).read(EXAMPLES.resolve(example.file()), truth.toNames());
    for (int i = 0; i < truth.pairs().size(); i++) {
      PairTruth pair = truth.pairs().get(i);
      PairReading read = reading.pairs().get(i);
      if (pair.isBad()) {
        assertThat(read.pattern()).isEmpty();
      } else {
        assertThat(read.counts().orElseThrow().csfOnly())
            .isCloseTo(pair.csfOnly(), within(pair.csfOnly() < MANY ? 0 : 1));
        assertThat(read.pattern().orElseThrow().number()).isEqualTo(pair.pattern());
      }
    }
  }

  /**
   * The net once overlooked every lane of this picture: it is flatter than what it learned from.
   */
  @Test
  void read_aFlatPicture_findsAsManyLanesAsATallOne(@TempDir Path folder) throws IOException {
    BufferedImage tall = ImageIO.read(EXAMPLES.resolve("gel-local.png").toFile());
    int height = tall.getHeight() / 4;
    BufferedImage flat = new BufferedImage(tall.getWidth(), height, BufferedImage.TYPE_BYTE_GRAY);
    flat.getGraphics()
        .drawImage(
            tall.getScaledInstance(tall.getWidth(), height, Image.SCALE_AREA_AVERAGING),
            0,
            0,
            null);
    Path file = folder.resolve("flat.png");
    assertThat(ImageIO.write(flat, "png", file.toFile())).isTrue();

    GelReading reading = new GelReader(GelFacts.standard()).read(file, LanePlan.NONE);

    assertThat(reading.lanes()).hasSize(6);
  }
}
