package cistern.gel.image;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.OptionalInt;

/**
 * Finds the tag Orientation in a file: in the EXIF segment of a JPEG, the eXIf chunk of a PNG, or
 * the first directory of a TIFF. Anything malformed counts as "no tag".
 */
final class ExifTag {
  private static final int ORIENTATION = 274;
  private static final int MOST_ENTRIES = 512;

  private ExifTag() {}

  /** The tag's value, if the file's first bytes hold it. */
  static OptionalInt read(PictureFormat format, byte[] head) {
    return switch (format) {
      case PNG -> inPng(head);
      case JPEG -> inJpeg(head);
      case TIFF_LITTLE, TIFF_BIG -> inDirectory(head, 0);
    };
  }

  private static OptionalInt inJpeg(byte[] b) {
    int at = 2;
    while (at + 10 < b.length && (b[at] & 0xFF) == 0xFF) {
      int marker = b[at + 1] & 0xFF;
      int length = ((b[at + 2] & 0xFF) << 8) | (b[at + 3] & 0xFF);
      if (marker == 0xE1 && b[at + 4] == 'E' && b[at + 5] == 'x' && b[at + 6] == 'i') {
        return inDirectory(b, at + 10);
      }
      if (marker == 0xDA || length < 2) {
        return OptionalInt.empty();
      }
      at += 2 + length;
    }
    return OptionalInt.empty();
  }

  private static OptionalInt inPng(byte[] b) {
    ByteBuffer file = ByteBuffer.wrap(b);
    int at = 8;
    while (at >= 8 && at + 12 < b.length) {
      int length = file.getInt(at);
      int type = file.getInt(at + 4);
      if (type == 0x65584966) {
        return inDirectory(b, at + 8);
      }
      if (length < 0 || length > b.length - at) {
        return OptionalInt.empty();
      }
      at += 12 + length;
    }
    return OptionalInt.empty();
  }

  private static OptionalInt inDirectory(byte[] b, int start) {
    if (start + 8 > b.length) {
      return OptionalInt.empty();
    }
    ByteBuffer file = ByteBuffer.wrap(b);
    file.order(b[start] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    long directory = start + (file.getInt(start + 4) & 0xFFFFFFFFL);
    if (directory + 2 > b.length) {
      return OptionalInt.empty();
    }
    int at = (int) directory;
    int entries = Math.min(MOST_ENTRIES, file.getShort(at) & 0xFFFF);
    for (int i = 0; i < entries && at + 2 + 12 * (i + 1) <= b.length; i++) {
      int entry = at + 2 + 12 * i;
      if ((file.getShort(entry) & 0xFFFF) == ORIENTATION) {
        return OptionalInt.of(file.getShort(entry + 8) & 0xFFFF);
      }
    }
    return OptionalInt.empty();
  }
}
