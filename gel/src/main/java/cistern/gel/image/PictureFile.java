package cistern.gel.image;

import cistern.fact.Facts;
import cistern.gel.image.UnreadablePicture.Reason;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * Reads the picture of a gel from a file of whatever origin. The size is read before any pixel, so
 * that memory stays bounded.
 */
public final class PictureFile {
  private static final int HEAD = 1 << 18;
  private static final int PART = 1 << 16;
  private final int leastSide;
  private final long mostPixels;
  private final long mostBytes;

  /** A reader with the limits of some facts. */
  public PictureFile(Facts facts) {
    this.leastSide = (int) facts.number("gel.image.least-side");
    this.mostPixels = (long) (1e6 * facts.number("gel.image.most-megapixels"));
    this.mostBytes = (long) (1e6 * facts.number("gel.image.most-megabytes"));
  }

  /**
   * The picture of a file, upright.
   *
   * @throws UnreadablePicture when the file is not a picture that can be read
   * @throws IOException when the file itself can't be read
   */
  public Picture read(Path file) throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(HEAD);
    }
    PictureFormat format =
        PictureFormat.parse(head)
            .orElseThrow(
                () ->
                    new UnreadablePicture(
                        Reason.WRONG_FORMAT,
                        "this is neither a PNG nor a JPEG nor a TIFF picture"));
    if (format == PictureFormat.PNG && isAnimated(head)) {
      throw new UnreadablePicture(
          Reason.ANIMATED, "this PNG is animated: save the gel as one still picture");
    }
    checkPages(file, format);
    BufferedImage image = decode(file, format);
    Picture stored = Channels.toPicture(image);
    return ExifTag.read(format, head).stream()
        .mapToObj(Orientation::parse)
        .flatMap(java.util.Optional::stream)
        .findFirst()
        .orElse(Orientation.UPRIGHT)
        .toUpright(stored);
  }

  /** The picture of a stream, which is read to its end. */
  public Picture read(InputStream in) throws IOException {
    Path copy = Files.createTempFile("gel", ".picture");
    try {
      copy(in, copy);
      return read(copy);
    } finally {
      Files.delete(copy);
    }
  }

  /** As much of a stream as a picture may hold; the rest is left. */
  private void copy(InputStream in, Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      byte[] part = new byte[PART];
      long left = mostBytes;
      for (int n = in.read(part); n > 0 && left > 0; n = in.read(part)) {
        out.write(part, 0, n);
        left -= n;
      }
    }
  }

  private BufferedImage decode(Path file, PictureFormat format) throws IOException {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format.reader());
    ImageReader reader = readers.next();
    Damage damage = new Damage();
    try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
      reader.setInput(in, true, true);
      reader.addIIOReadWarningListener(damage);
      check(reader.getWidth(0), reader.getHeight(0));
      BufferedImage image = reader.read(0);
      if (damage.isSeen()) {
        throw broken();
      }
      return image;
    } catch (UnreadablePicture e) {
      throw e;
    } catch (OutOfMemoryError e) {
      throw new UnreadablePicture(
          Reason.TOO_LARGE,
          "this picture needs more memory than is free: save it in grey, or at 300 dpi");
    } catch (javax.imageio.IIOException e) {
      boolean isColours = String.valueOf(e.getMessage()).contains("Unsupported Image Type");
      throw isColours ? Channels.inks() : broken();
    } catch (IOException | RuntimeException e) {
      throw broken();
    } finally {
      reader.dispose();
    }
  }

  /** A file of several pages is none that can be read: which of them is the gel? */
  private static void checkPages(Path file, PictureFormat format) throws IOException {
    int pages =
        switch (format) {
          case PNG, JPEG -> 1;
          case TIFF_LITTLE -> TiffPages.count(file, ByteOrder.LITTLE_ENDIAN);
          case TIFF_BIG -> TiffPages.count(file, ByteOrder.BIG_ENDIAN);
        };
    if (pages > 1) {
      throw new UnreadablePicture(
          Reason.SEVERAL_PAGES,
          "this TIFF has " + pages + " pages: save the page that shows the gel as one picture");
    }
  }

  private static UnreadablePicture broken() {
    return new UnreadablePicture(
        Reason.BROKEN, "the picture ends early or is broken inside: save or copy it again");
  }

  private void check(int width, int height) throws UnreadablePicture {
    if ((long) width * height > mostPixels) {
      throw new UnreadablePicture(
          Reason.TOO_LARGE,
          String.format(
              java.util.Locale.ROOT,
              "%d by %d pixels are more than the %d million that are read: scan at 300 to 600 dpi",
              width,
              height,
              mostPixels / 1_000_000));
    }
    if (Math.min(width, height) < leastSide) {
      throw new UnreadablePicture(
          Reason.TOO_SMALL,
          String.format(
              java.util.Locale.ROOT,
              "%d by %d pixels are too few to show a gel: at least %d each way",
              width,
              height,
              leastSide));
    }
  }

  /** Whether a PNG has the chunk that announces an animation, which comes before the pixels. */
  private static boolean isAnimated(byte[] head) {
    for (int i = 8; i + 4 <= head.length; i++) {
      if (head[i] == 'I' && head[i + 1] == 'D' && head[i + 2] == 'A' && head[i + 3] == 'T') {
        return false;
      }
      if (head[i] == 'a' && head[i + 1] == 'c' && head[i + 2] == 'T' && head[i + 3] == 'L') {
        return true;
      }
    }
    return false;
  }
}
