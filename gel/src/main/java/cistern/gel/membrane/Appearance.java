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

  /** What the picture itself shows. */
  public static Appearance of(Picture picture, Sheet sheet) {
    Runs upright = Runs.of(picture, sheet);
    Runs across = Runs.of(picture.toTransposed(), sheet.toTransposed());
    boolean isAcross = upright.likeness() > across.likeness();
    Runs along = isAcross ? across : upright;
    double lightness = along.skew() + along.contrast();
    return new Appearance(
        isAcross ? Posture.ACROSS : Posture.UPRIGHT,
        lightness > 0 ? Polarity.LIGHT_ON_DARK : Polarity.DARK_ON_LIGHT);
  }
}
