package cistern.gel.image;

import cistern.gel.image.UnreadablePicture.Reason;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;

/**
 * Takes one channel out of a decoded picture: of a coloured one that with most detail up and down,
 * where a stain of that colour shows best.
 */
final class Channels {
  private Channels() {}

  static Picture toPicture(BufferedImage image) throws UnreadablePicture {
    if (image.getColorModel().getColorSpace().getType() == ColorSpace.TYPE_CMYK) {
      throw inks();
    }
    Raster raster = image.getRaster();
    int type = raster.getDataBuffer().getDataType();
    boolean isPlain =
        image.getColorModel() instanceof ComponentColorModel
            && (type == DataBuffer.TYPE_BYTE || type == DataBuffer.TYPE_USHORT);
    if (isPlain) {
      int bits = image.getColorModel().getComponentSize(0);
      int colours = image.getColorModel().getNumColorComponents();
      return colours < 3 ? band(raster, 0, bits) : band(raster, strongest(raster), bits);
    }
    if (type == DataBuffer.TYPE_FLOAT
        || type == DataBuffer.TYPE_DOUBLE
        || image.getColorModel().getComponentSize(0) > 16) {
      throw new UnreadablePicture(
          Reason.UNKNOWN_COLOURS,
          "samples of more than 16 bits are not read: save it with 8 or 16");
    }
    return packed(image);
  }

  /** Ink is no light: how much a mixture of inks lets through depends on the printer. */
  static UnreadablePicture inks() {
    return new UnreadablePicture(
        Reason.UNKNOWN_COLOURS,
        "the colours of this picture (CMYK?) are not read: save it in grey or RGB");
  }

  private static Picture band(Raster raster, int band, int bits) {
    int w = raster.getWidth();
    int h = raster.getHeight();
    char[] samples = new char[w * h];
    int[] row = new int[w];
    int most = (1 << bits) - 1;
    for (int y = 0; y < h; y++) {
      raster.getSamples(raster.getMinX(), raster.getMinY() + y, w, 1, band, row);
      for (int x = 0; x < w; x++) {
        samples[y * w + x] = (char) (row[x] * (long) Picture.WHITE / most);
      }
    }
    return Picture.of(w, h, samples);
  }

  /** A palette or packed picture: its green, red or blue, whichever has most detail. */
  private static Picture packed(BufferedImage image) {
    int w = image.getWidth();
    int h = image.getHeight();
    BufferedImage plain = new BufferedImage(w, h, BufferedImage.TYPE_3BYTE_BGR);
    int[] row = new int[w];
    for (int y = 0; y < h; y++) {
      image.getRGB(0, y, w, 1, row, 0, w);
      plain.setRGB(0, y, w, 1, row, 0, w);
    }
    return band(plain.getRaster(), strongest(plain.getRaster()), 8);
  }

  /** The channel with the greatest mean difference of samples a few rows apart. */
  private static int strongest(Raster raster) {
    int best = 1;
    double most = 0;
    for (int band : new int[] {1, 0, 2}) {
      double detail = detail(raster, band);
      if (detail > most * 1.05) {
        most = detail;
        best = band;
      }
    }
    return best;
  }

  /** Rows are averaged over runs of columns first, so that noise does not count as detail. */
  private static double detail(Raster raster, int band) {
    int w = raster.getWidth();
    int h = raster.getHeight();
    int run = Math.max(1, w / 48);
    int apart = Math.max(2, h / 200);
    double[][] means = new double[h][];
    int[] row = new int[w];
    for (int y = 0; y < h; y++) {
      raster.getSamples(raster.getMinX(), raster.getMinY() + y, w, 1, band, row);
      double[] mean = new double[w / run];
      for (int x = 0; x < mean.length * run; x++) {
        mean[x / run] += row[x];
      }
      means[y] = mean;
    }
    double sum = 0;
    for (int y = apart; y < h; y++) {
      for (int x = 0; x < means[y].length; x++) {
        double d = (means[y][x] - means[y - apart][x]) / run;
        sum += d * d;
      }
    }
    return sum;
  }
}
