package cistern.gel.image;

import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;

/**
 * Notices what a JPEG decoder only warns of: data that end early or are corrupt. It fills the rest
 * with grey and would leave a gel without the bands that stood there.
 */
final class Damage implements IIOReadWarningListener {
  private boolean seen;

  @Override
  public void warningOccurred(ImageReader source, String warning) {
    seen |= warning.contains("Truncated") || warning.contains("Corrupt");
  }

  /** Whether the picture that was read is not whole. */
  boolean isSeen() {
    return seen;
  }
}
