package cistern.gel.image;

import java.util.Optional;

/**
 * How the stored rows and columns lie in the picture as it should be seen: the eight values of the
 * tag Orientation (TIFF 6.0, page 36; EXIF 2.32, tag 274).
 *
 * @param transposed whether stored rows are columns of the picture
 * @param mirrored whether the picture's columns run from right to left
 * @param upsideDown whether the picture's rows run from bottom to top
 */
record Orientation(boolean transposed, boolean mirrored, boolean upsideDown) {
  static final Orientation UPRIGHT = new Orientation(false, false, false);

  /** The orientation of a tag's value, 1 to 8. */
  static Optional<Orientation> parse(int value) {
    return switch (value) {
      case 1 -> Optional.of(UPRIGHT);
      case 2 -> Optional.of(new Orientation(false, true, false));
      case 3 -> Optional.of(new Orientation(false, true, true));
      case 4 -> Optional.of(new Orientation(false, false, true));
      case 5 -> Optional.of(new Orientation(true, false, false));
      case 6 -> Optional.of(new Orientation(true, true, false));
      case 7 -> Optional.of(new Orientation(true, true, true));
      case 8 -> Optional.of(new Orientation(true, false, true));
      default -> Optional.empty();
    };
  }

  /** The picture as it should be seen. */
  Picture toUpright(Picture stored) {
    if (equals(UPRIGHT)) {
      return stored;
    }
    Picture turned = transposed ? stored.toTransposed() : stored;
    int w = turned.width();
    int h = turned.height();
    char[] samples = new char[w * h];
    for (int y = 0; y < h; y++) {
      int from = upsideDown ? h - 1 - y : y;
      for (int x = 0; x < w; x++) {
        samples[y * w + x] = turned.at(mirrored ? w - 1 - x : x, from);
      }
    }
    return Picture.of(w, h, samples);
  }
}
