package cistern.gel.membrane;

import cistern.gel.image.Picture;
import cistern.gel.image.Polarity;

/**
 * How a gel stands in its picture.
 *
 * @param posture how the lanes run
 * @param polarity whether stain is darker or lighter than the membrane
 */
public record Appearance(Posture posture, Polarity polarity) {

  /** How many times more alike runs must be to say that a gel lies on its side, which few do. */
  private static final double ACROSS = 3;

  /** What the picture itself shows. */
  public static Appearance of(Picture picture, Sheet sheet) {
    Runs upright = Runs.of(picture, sheet);
    Runs across = Runs.of(picture.toTransposed(), sheet.toTransposed());
    boolean isAcross = upright.likeness() > ACROSS * Math.max(0, across.likeness());
    Runs along = isAcross ? across : upright;
    double lightness = along.skew() + along.contrast();
    return new Appearance(
        isAcross ? Posture.ACROSS : Posture.UPRIGHT,
        lightness > 0 ? Polarity.LIGHT_ON_DARK : Polarity.DARK_ON_LIGHT);
  }
}
