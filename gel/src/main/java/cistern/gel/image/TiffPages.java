package cistern.gel.image;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.imageio.stream.ImageInputStream;

/** The pages of a TIFF: its chain of image file directories (TIFF 6.0, page 14). */
final class TiffPages {
  /** Pages after which counting stops. */
  private static final int MOST = 1000;

  private static final int ENTRY = 12;

  private TiffPages() {}

  /** How many pages a file has; a chain that ends early or runs in a circle ends there. */
  static int count(Path file, ByteOrder order) throws IOException {
    Set<Long> pages = new HashSet<>();
    try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
      in.setByteOrder(order);
      in.seek(4);
      long at = in.readUnsignedInt();
      while (at != 0 && pages.size() < MOST && pages.add(at)) {
        in.seek(at);
        long entries = in.readUnsignedShort();
        in.seek(at + 2 + ENTRY * entries);
        at = in.readUnsignedInt();
      }
    } catch (EOFException e) {
      return pages.size();
    }
    return pages.size();
  }
}
