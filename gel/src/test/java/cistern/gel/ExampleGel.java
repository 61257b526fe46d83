package cistern.gel;

import cistern.gel.image.Picture;
import cistern.gel.synthetic.GelMaker;
import cistern.gel.synthetic.Level;
import cistern.gel.synthetic.PairTruth.Case;
import cistern.gel.synthetic.SyntheticGel;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageIO;

/** The invented gels of {@code examples/}: two pairs and two controls each. */
enum ExampleGel {
  NORMAL(Level.EASY, 8, Case.NONE, Case.LOCAL),
  LOCAL(Level.EASY, 1, Case.NONE, Case.LOCAL),
  MIXED(Level.EASY, 3, Case.MIXED, Case.NONE),
  SYSTEMIC(Level.EASY, 1, Case.SYSTEMIC, Case.LOCAL),
  /** Lies on its side. */
  LADDER(Level.EASY, 7, Case.LADDER, Case.ONE),
  /** A hard photograph with another person's serum in its first pair. */
  MISPAIRED(Level.HARD, 8, Case.MISPAIRED, Case.LOCAL);

  private final Level level;
  private final long seed;
  private final Case first;
  private final Case second;

  ExampleGel(Level level, long seed, Case first, Case second) {
    this.level = level;
    this.seed = seed;
    this.first = first;
    this.second = second;
  }

  String file() {
    return "gel-" + name().toLowerCase(java.util.Locale.ROOT) + ".png";
  }

  SyntheticGel make() {
    return GelMaker.of(level, seed, List.of(first, second));
  }

  /** The gel as a grey PNG of 8 bits. */
  byte[] toPng() throws IOException {
    Picture picture = make().toPicture();
    BufferedImage grey =
        new BufferedImage(picture.width(), picture.height(), BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < picture.height(); y++) {
      for (int x = 0; x < picture.width(); x++) {
        grey.getRaster().setSample(x, y, 0, picture.at(x, y) >> 8);
      }
    }
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(grey, "png", png);
    return png.toByteArray();
  }
}
