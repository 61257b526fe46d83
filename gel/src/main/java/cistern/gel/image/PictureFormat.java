package cistern.gel.image;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/** The file formats that are read, told by their first bytes and never by the file's name. */
enum PictureFormat {
  PNG("png", "89504e47"),
  JPEG("jpeg", "ffd8ff"),
  TIFF_LITTLE("tiff", "49492a00"),
  TIFF_BIG("tiff", "4d4d002a");

  private final String reader;
  private final String magic;

  PictureFormat(String reader, String magic) {
    this.reader = reader;
    this.magic = magic;
  }

  /** The name of the format for the platform's readers. */
  String reader() {
    return reader;
  }

  /** The format whose first bytes a file has. */
  static Optional<PictureFormat> parse(byte[] head) {
    String start = HexFormat.of().formatHex(Arrays.copyOf(head, 4));
    return Arrays.stream(values()).filter(f -> start.startsWith(f.magic)).findFirst();
  }
}
