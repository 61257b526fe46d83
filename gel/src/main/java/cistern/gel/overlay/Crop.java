package cistern.gel.overlay;

import cistern.gel.image.Picture;
import cistern.gel.reading.LaneReading;
import java.awt.image.BufferedImage;
import java.util.List;

/**
 * The part of the picture that holds the lanes, in the lanes' own coordinates, always upright: what
 * lies outside may carry names. It is drawn at a size that prints well.
 *
 * @param left first column
 * @param top first row
 * @param width columns
 * @param height rows
 * @param scale drawn pixels per pixel
 */
record Crop(int left, int top, int width, int height, double scale) {
  private static final int PRINTED = 1400;

  /** Some lanes with half a lane's width to the sides, from their first to their last row. */
  static Crop of(int width, int height, List<LaneReading> lanes) {
    double from = width;
    double to = 0;
    double first = height;
    double last = 0;
    for (LaneReading lane : lanes) {
      double lean = Math.abs(lane.slope()) * height / 2 + 0.6 * lane.width();
      from = Math.min(from, lane.xCentre() - lean);
      to = Math.max(to, lane.xCentre() + lean);
      for (LaneReading.BandMark band : lane.bands()) {
        first = Math.min(first, band.y());
        last = Math.max(last, band.y());
      }
    }
    if (lanes.isEmpty()) {
      return new Crop(0, 0, 1, 1, PRINTED);
    }
    double margin = 0.06 * height;
    int top = (int) Math.max(0, Math.min(first - margin, 0.2 * height));
    int bottom = (int) Math.min(height, Math.max(last + margin, 0.8 * height));
    int left = (int) Math.clamp(from, 0, width - 1.0);
    int right = (int) Math.clamp(to, left + 1.0, width);
    return new Crop(left, top, right - left, bottom - top, PRINTED / (double) (right - left));
  }

  double x(double column) {
    return (column - left) * scale;
  }

  double y(double row) {
    return (row - top) * scale;
  }

  int drawnWidth() {
    return (int) Math.round(width * scale);
  }

  int drawnHeight() {
    return (int) Math.ceil(height * scale);
  }

  /** The picture's part in grey. */
  BufferedImage cut(Picture upright) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int v = upright.at(left + x, top + y) >> 8;
        image.setRGB(x, y, v << 16 | v << 8 | v);
      }
    }
    return image;
  }
}
