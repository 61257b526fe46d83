package cistern.gel.overlay;

import cistern.gel.image.Picture;
import cistern.gel.reading.GelReading;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Writes the overlay of a reading as a PNG. */
public final class OverlayFile {
  private OverlayFile() {}

  /**
   * Draws the reading and writes it.
   *
   * @throws IOException when the file can't be written
   */
  public static void toPng(Picture picture, GelReading reading, Path file) throws IOException {
    BufferedImage drawn = Overlay.of(picture, reading);
    try (var out = Files.newOutputStream(file)) {
      if (!ImageIO.write(drawn, "png", out)) {
        throw new IOException("no PNG writer");
      }
    }
  }
}
