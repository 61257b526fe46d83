package cistern.gel.image;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Set;

/** A TIFF of one strip without compression, 8 bits a sample (TIFF 6.0, part 1). */
final class TiffBytes {
  private static final int HEAD = 8;
  private static final int ENTRY = 12;

  /** Tags whose values are 32 bits long; those of the others are 16. */
  private static final Set<Integer> LONG = Set.of(256, 257, 273, 278, 279);

  private TiffBytes() {}

  static byte[] of(int width, int height, int photometric, byte[] samples) {
    return of(width, height, photometric, samples, 1);
  }

  /**
   * @param photometric 0 white is zero, 1 black is zero, 5 four inks
   * @param orientation 1 to 8, of the tag Orientation
   */
  static byte[] of(int width, int height, int photometric, byte[] samples, int orientation) {
    int perPixel = photometric == 5 ? 4 : 1;
    int[][] entries = {
      {256, width},
      {257, height},
      {258, 8},
      {259, 1},
      {262, photometric},
      {273, HEAD},
      {274, orientation},
      {277, perPixel},
      {278, height},
      {279, width * height * perPixel}
    };
    int directory = HEAD + samples.length + samples.length % 2;
    int depths = directory + 2 + ENTRY * entries.length + 4;
    ByteBuffer out = ByteBuffer.allocate(depths + 8).order(ByteOrder.LITTLE_ENDIAN);
    out.putShort((short) 0x4949).putShort((short) 42).putInt(directory).put(samples);
    out.position(directory);
    out.putShort((short) entries.length);
    for (int[] entry : entries) {
      boolean isDepths = entry[0] == 258 && perPixel == 4;
      boolean isLong = LONG.contains(entry[0]);
      out.putShort((short) entry[0]).putShort((short) (isLong ? 4 : 3));
      out.putInt(isDepths ? 4 : 1).putInt(isDepths ? depths : entry[1]);
    }
    out.putInt(0);
    for (int i = 0; i < 4; i++) {
      out.putShort((short) 8);
    }
    return out.array();
  }
}
