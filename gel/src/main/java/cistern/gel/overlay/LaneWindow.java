package cistern.gel.overlay;

import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * The part of a picture that holds some lanes, always upright: nothing of what is written beside
 * the lanes is in it. Places are pixels of the picture from the window's top left corner.
 */
public final class LaneWindow {
  private static final int WIDEST = 1600;
  private static final int HIGHEST = 2400;
  private final GelReading reading;
  private final Crop crop;

  private LaneWindow(GelReading reading, Crop crop) {
    this.reading = reading;
    this.crop = crop;
  }

  /** The window of some lanes of a reading. */
  public static LaneWindow of(GelReading reading, List<LaneReading> lanes) {
    boolean isAcross = isAcross(reading);
    int width = isAcross ? reading.picture().height() : reading.picture().width();
    return new LaneWindow(reading, Crop.of(width, rows(reading), lanes));
  }

  private static boolean isAcross(GelReading reading) {
    return reading.picture().posture() == Posture.ACROSS;
  }

  private static int rows(GelReading reading) {
    return isAcross(reading) ? reading.picture().width() : reading.picture().height();
  }

  /** Columns. */
  public int width() {
    return crop.width();
  }

  /** Rows. */
  public int height() {
    return crop.height();
  }

  /**
   * Where a lane is in a row of the window.
   *
   * @param widths from the lane's middle, in widths of the lane
   */
  public double x(LaneReading lane, double row, double widths) {
    double fromMiddle = row + crop.top() - rows(reading) / 2.0;
    return lane.xCentre() + fromMiddle * lane.slope() + widths * lane.width() - crop.left();
  }

  /** The row of a band. */
  public double y(LaneReading.BandMark band) {
    return band.y() - crop.top();
  }

  /** Whether bands are darker or lighter than what they lie on. */
  Polarity polarity() {
    return reading.picture().polarity();
  }

  /** The light at a place of the window, from 0 to 1; beyond the picture what its edge shows. */
  double light(Picture picture, double x, double y) {
    int column = (int) Math.round(x) + crop.left();
    int row = (int) Math.round(y) + crop.top();
    boolean isAcross = isAcross(reading);
    int right = Math.clamp(isAcross ? row : column, 0, picture.width() - 1);
    int down = Math.clamp(isAcross ? column : row, 0, picture.height() - 1);
    return picture.at(right, down) / (double) Picture.WHITE;
  }

  /** The window of the picture in grey as a PNG, smaller when it is very large. */
  public byte[] toPng(Picture picture) {
    BufferedImage cut = crop.cut(isAcross(reading) ? picture.toTransposed() : picture);
    double scale =
        Math.min(1, Math.min(WIDEST / (double) crop.width(), HIGHEST / (double) crop.height()));
    try (ByteArrayOutputStream png = new ByteArrayOutputStream()) {
      if (!ImageIO.write(scale < 1 ? smaller(cut, scale) : cut, "png", png)) {
        throw new IllegalStateException("no PNG writer");
      }
      return png.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static BufferedImage smaller(BufferedImage image, double scale) {
    int width = (int) Math.max(1, Math.round(image.getWidth() * scale));
    int height = (int) Math.max(1, Math.round(image.getHeight() * scale));
    BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D ink = small.createGraphics();
    ink.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    ink.drawImage(image, 0, 0, width, height, null);
    ink.dispose();
    return small;
  }
}
