package cistern.gel;

import cistern.gel.image.Picture;
import cistern.gel.image.Posture;
import cistern.gel.image.Stance;
import cistern.gel.lanes.LaneFinder;
import cistern.gel.net.GreyPlane;
import cistern.gel.net.LaneMaps;
import cistern.gel.net.Nets;

/**
 * A picture as it is read: lanes upright, turned to its stance, and small enough.
 *
 * @param factor pixels of the picture in one of the plane
 * @param width columns of the upright picture
 */
record View(
    Posture posture, Stance stance, GreyPlane plane, int factor, int width, LaneFinder lanes) {

  /** How the lanes are seen at least for the picture not to be tried on its side. */
  private static final double CLEAR = 0.5;

  /** How much more clearly lanes must be seen across the picture, which few gels lie. */
  private static final double ACROSS = 1.3;

  /**
   * The view of a picture.
   *
   * @param mostPixels above which pixels are averaged
   */
  static View of(Picture picture, long mostPixels) {
    View upright = of(picture, Posture.UPRIGHT, mostPixels);
    if (upright.lanes.clarity() >= CLEAR) {
      return upright.weighed();
    }
    View across = of(picture.toTransposed(), Posture.ACROSS, mostPixels);
    boolean isAcross = across.lanes.clarity() > ACROSS * upright.lanes.clarity();
    return (isAcross ? across : upright).weighed();
  }

  /** The same, in which an empty place counts for less than a lane. */
  private View weighed() {
    LaneFinder weighed = lanes.weighed(new LaneContent(plane)::of);
    return new View(posture, stance, plane, factor, width, weighed);
  }

  private static View of(Picture upright, Posture posture, long mostPixels) {
    Stance stance = Stance.of(upright);
    int factor = 1;
    while ((long) (upright.width() / factor) * (upright.height() / factor) > mostPixels) {
      factor++;
    }
    GreyPlane plane = GreyPlane.of(stance.turn(upright).toReduced(factor));
    LaneMaps maps = LaneMaps.of(Nets.started(), plane);
    return new View(posture, stance, plane, factor, upright.width(), LaneFinder.of(maps));
  }

  /** A column of the plane in the picture, or of the picture in the plane. */
  double toPicture(double column) {
    double x = column * factor + 0.5 * (factor - 1);
    return stance.isMirrored() ? width - 1 - x : x;
  }

  /** A column of the picture in the plane. */
  double toPlane(double column) {
    double x = stance.isMirrored() ? width - 1 - column : column;
    return (x - 0.5 * (factor - 1)) / factor;
  }

  /** Columns per row in the picture of so many in the plane. */
  double slope(double inPlane) {
    return stance.isMirrored() ? -inPlane : inPlane;
  }

  /** The row of the plane at the picture's mid-height. */
  double middleRow() {
    return (plane.height() - 1) / 2.0;
  }
}
