package cistern.gel.image;

import java.util.Arrays;
import java.util.BitSet;

/**
 * A picture of one channel, row by row from the top left, upright as its file says it should be
 * seen.
 *
 * <p>Samples run from 0 (no light) to 65,535, whatever the depth of the file was.
 */
public final class Picture {
  /** The greatest sample. */
  public static final int WHITE = 0xFFFF;

  private final int width;
  private final int height;
  private final char[] samples;

  private Picture(int width, int height, char[] samples) {
    if (width < 1 || height < 1 || samples.length != width * height) {
      throw new IllegalArgumentException("a picture needs width times height samples");
    }
    this.width = width;
    this.height = height;
    this.samples = samples;
  }

  /** The picture that takes over the samples, which the caller gives up. */
  public static Picture of(int width, int height, char[] samples) {
    return new Picture(width, height, samples);
  }

  /** Columns. */
  public int width() {
    return width;
  }

  /** Rows. */
  public int height() {
    return height;
  }

  /** The sample in column x and row y. */
  public char at(int x, int y) {
    return samples[y * width + x];
  }

  /** How many different samples there are: a picture with few shows steps where light changes. */
  public int shades() {
    BitSet shades = new BitSet(WHITE + 1);
    for (char sample : samples) {
      shades.set(sample);
    }
    return shades.cardinality();
  }

  /** Rows become columns: a picture whose lanes lie across is read through its transpose. */
  public Picture toTransposed() {
    char[] turned = new char[samples.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        turned[x * height + y] = samples[y * width + x];
      }
    }
    return new Picture(height, width, turned);
  }

  /** Every block of factor × factor samples as its mean; an incomplete last block is left out. */
  public Picture toReduced(int factor) {
    if (factor == 1) {
      return this;
    }
    int w = width / factor;
    int h = height / factor;
    char[] means = new char[w * h];
    int[] sums = new int[w];
    for (int y = 0; y < h; y++) {
      Arrays.fill(sums, 0);
      for (int row = y * factor; row < (y + 1) * factor; row++) {
        for (int x = 0; x < w * factor; x++) {
          sums[x / factor] += samples[row * width + x];
        }
      }
      for (int x = 0; x < w; x++) {
        means[y * w + x] = (char) (sums[x] / (factor * factor));
      }
    }
    return new Picture(w, h, means);
  }

  /** Left and right exchanged, light and dark exchanged, or both. */
  Picture toTurned(boolean isMirrored, boolean isInverted) {
    char[] turned = new char[samples.length];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        char v = samples[y * width + (isMirrored ? width - 1 - x : x)];
        turned[y * width + x] = isInverted ? (char) (WHITE - v) : v;
      }
    }
    return new Picture(width, height, turned);
  }
}
