package cistern.gel.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import cistern.gel.GelFacts;
import cistern.gel.image.UnreadablePicture.Reason;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PictureFileTest {
  private static final PictureFile FILES = new PictureFile(GelFacts.standard());
  @TempDir private Path folder;

  /** A picture whose left half is dark and whose top row is light. */
  private static BufferedImage image(int type) {
    BufferedImage image = new BufferedImage(100, 80, type);
    for (int y = 0; y < 80; y++) {
      for (int x = 0; x < 100; x++) {
        int v = y < 8 ? 255 : x < 50 ? 40 : 160;
        image.setRGB(x, y, v << 16 | v << 8 | v);
      }
    }
    return image;
  }

  private Path write(BufferedImage image, String format) throws IOException {
    Path file = folder.resolve("picture." + format);
    assertThat(ImageIO.write(image, format, file.toFile())).isTrue();
    return file;
  }

  private static byte[] bytes(BufferedImage image, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, format, out);
    return out.toByteArray();
  }

  private Reason reason(byte[] content) throws IOException {
    Path file = folder.resolve("hostile");
    Files.write(file, content);
    return catchThrowableOfType(UnreadablePicture.class, () -> FILES.read(file)).reason();
  }

  @Nested
  class Formats {
    @ParameterizedTest
    @CsvSource({
      "png, 5",
      "png, 10",
      "png, 11",
      "png, 13",
      "png, 6",
      "jpeg, 5",
      "jpeg, 10",
      "tiff, 5",
      "tiff, 10",
      "tiff, 11",
      "tiff, 13"
    })
    void read_formatAndColourModel_keepsLightAndDark(String format, int type) throws IOException {
      BufferedImage image = image(type == 6 ? BufferedImage.TYPE_4BYTE_ABGR : type);
      if (type == 6) {
        for (int i = 0; i < 8000; i++) {
          image.setRGB(i % 100, i / 100, 0xFF000000 | image(5).getRGB(i % 100, i / 100));
        }
      }
      Picture picture = FILES.read(write(image, format));
      assertThat(picture.width()).isEqualTo(100);
      assertThat(picture.height()).isEqualTo(80);
      assertThat((int) picture.at(20, 40)).isLessThan((int) picture.at(80, 40));
      assertThat((int) picture.at(20, 2)).isGreaterThan(60_000);
    }

    @Test
    void read_colouredStain_takesTheChannelThatShowsIt() throws IOException {
      BufferedImage image = new BufferedImage(100, 80, BufferedImage.TYPE_INT_RGB);
      for (int i = 0; i < 8000; i++) {
        boolean isBand = i / 100 % 20 < 4;
        image.setRGB(i % 100, i / 100, isBand ? 0xE0E010 : 0xE0E0E0);
      }
      Picture picture = FILES.read(write(image, "png"));
      assertThat((int) picture.at(50, 1)).isLessThan(10_000);
      assertThat((int) picture.at(50, 10)).isGreaterThan(50_000);
    }

    @ParameterizedTest
    @CsvSource({
      "1, 0, 0",
      "2, 99, 0",
      "3, 99, 79",
      "4, 0, 79",
      "5, 0, 0",
      "6, 79, 0",
      "7, 79, 99",
      "8, 0, 99"
    })
    void read_exifOrientation_putsTheFirstSampleInItsPlace(int tag, int x, int y)
        throws IOException {
      // Where the stored top left goes: EXIF 2.32, tag 274.
      BufferedImage image = image(BufferedImage.TYPE_BYTE_GRAY);
      for (int i = 0; i < 8000; i++) {
        boolean isCorner = i % 100 < 24 && i / 100 < 24;
        image.getRaster().setSample(i % 100, i / 100, 0, isCorner ? 250 : 20);
      }
      Path file = folder.resolve("turned.jpg");
      Files.write(file, withExif(bytes(image, "jpeg"), tag));
      Picture picture = FILES.read(file);
      assertThat(picture.width()).isEqualTo(tag < 5 ? 100 : 80);
      assertThat((int) picture.at(x, y)).isGreaterThan(50_000);
      assertThat((int) picture.at(picture.width() - 1 - x, picture.height() - 1 - y))
          .isLessThan(15_000);
    }

    @Test
    void read_orientationOfATiff_isHeeded() throws IOException {
      byte[] samples = new byte[100 * 80];
      Arrays.fill(samples, 0, 2000, (byte) 250);
      Path file = folder.resolve("turned.tif");
      Files.write(file, TiffBytes.of(100, 80, 1, samples, 3));
      Picture picture = FILES.read(file);
      assertThat((int) picture.at(50, 79)).isGreaterThan(60_000);
      assertThat((int) picture.at(50, 0)).isZero();
    }

    @Test
    void read_tiffWhoseZeroIsWhite_isTurnedRound() throws IOException {
      byte[] samples = new byte[100 * 80];
      Arrays.fill(samples, 0, 4000, (byte) 250);
      Path file = folder.resolve("white-is-zero.tif");
      Files.write(file, TiffBytes.of(100, 80, 0, samples));
      Picture picture = FILES.read(file);
      assertThat((int) picture.at(50, 0)).isLessThan(5_000);
      assertThat((int) picture.at(50, 79)).isEqualTo(Picture.WHITE);
    }

    @Test
    void read_orientationOfAPng_isHeeded() throws IOException {
      byte[] png = bytes(image(BufferedImage.TYPE_BYTE_GRAY), "png");
      // Chunk eXIf (PNG 3rd edition, 11.3.3.5): a big-endian TIFF head, tag 274, short, 3.
      byte[] chunk =
          HexFormat.of()
              .parseHex(
                  "00000016"
                      + "65584966"
                      + "4d4d002a00000008"
                      + "0001"
                      + "011200030000000100030000");
      ByteBuffer out = ByteBuffer.allocate(png.length + chunk.length + 4);
      CRC32 sum = new CRC32();
      sum.update(chunk, 4, chunk.length - 4);
      out.put(png, 0, 33).put(chunk).putInt((int) sum.getValue()).put(png, 33, png.length - 33);
      Path file = folder.resolve("turned.png");
      Files.write(file, out.array());
      Picture picture = FILES.read(file);
      assertThat((int) picture.at(50, 79)).isGreaterThan(60_000);
      assertThat((int) picture.at(50, 0)).isLessThan(50_000);
    }

    private static byte[] withExif(byte[] jpeg, int tag) {
      // Segment APP1 of 34 bytes, "Exif", a big-endian TIFF head, one entry: tag 274, short, 1.
      byte[] exif =
          HexFormat.of()
              .parseHex(
                  "ffe10022"
                      + "457869660000"
                      + "4d4d002a00000008"
                      + "0001"
                      + "011200030000000100"
                      + String.format(Locale.ROOT, "%02x", tag)
                      + "000000000000");
      ByteBuffer out = ByteBuffer.allocate(jpeg.length + exif.length);
      return out.put(jpeg, 0, 2).put(exif).put(jpeg, 2, jpeg.length - 2).array();
    }
  }

  @Nested
  class Hostile {
    @Test
    void read_notAPicture_isWrongFormat() throws IOException {
      assertThat(reason("GIF89a is no gel".getBytes(StandardCharsets.UTF_8)))
          .isEqualTo(Reason.WRONG_FORMAT);
      assertThat(reason(new byte[] {1})).isEqualTo(Reason.WRONG_FORMAT);
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpeg", "tiff"})
    void read_truncated_isBroken(String format) throws IOException {
      byte[] whole = bytes(grainy(), format);
      assertThat(reason(Arrays.copyOf(whole, 30))).isEqualTo(Reason.BROKEN);
      assertThat(reason(Arrays.copyOf(whole, whole.length / 2))).isEqualTo(Reason.BROKEN);
      assertThat(reason(Arrays.copyOf(whole, 9 * whole.length / 10))).isEqualTo(Reason.BROKEN);
    }

    @Test
    void read_jpegWhoseDataAreCorrupt_isBroken() throws IOException {
      byte[] jpeg = bytes(grainy(), "jpeg");
      Arrays.fill(jpeg, jpeg.length / 2, jpeg.length / 2 + 400, (byte) 0);
      assertThat(reason(jpeg)).isEqualTo(Reason.BROKEN);
    }

    /** A picture whose JPEG is long. */
    private static BufferedImage grainy() {
      BufferedImage image = image(BufferedImage.TYPE_BYTE_GRAY);
      for (int i = 0; i < 8000; i++) {
        image.getRaster().setSample(i % 100, i / 100, 0, i * 7919 % 251);
      }
      return image;
    }

    @Test
    void read_inks_areUnknownColours() throws IOException {
      // TIFF 6.0, page 69: photometric interpretation 5, four samples of ink a pixel.
      byte[] inks = new byte[100 * 80 * 4];
      for (int i = 0; i < inks.length; i++) {
        inks[i] = (byte) (i / 4 % 100 < 50 ? 200 : 30);
      }
      assertThat(reason(TiffBytes.of(100, 80, 5, inks))).isEqualTo(Reason.UNKNOWN_COLOURS);
      byte[] jpeg = jpegOfFourChannels();
      assertThat(reason(jpeg)).isEqualTo(Reason.UNKNOWN_COLOURS);
    }

    private static byte[] jpegOfFourChannels() throws IOException {
      WritableRaster raster =
          Raster.createInterleavedRaster(DataBuffer.TYPE_BYTE, 100, 80, 4, null);
      for (int i = 0; i < 8000; i++) {
        raster.setPixel(i % 100, i / 100, new int[] {i % 200, 40, 90, 10});
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
      try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
        writer.setOutput(stream);
        writer.write(null, new IIOImage(raster, null, null), null);
      }
      return out.toByteArray();
    }

    @Test
    void read_tiffThatPromisesMorePixelsThanItHolds_isBroken() throws IOException {
      assertThat(reason(TiffBytes.of(6000, 6000, 1, new byte[8000]))).isEqualTo(Reason.BROKEN);
    }

    @Test
    void read_oneByOne_isTooSmall() throws IOException {
      BufferedImage tiny = new BufferedImage(1, 1, BufferedImage.TYPE_BYTE_GRAY);
      assertThat(reason(bytes(tiny, "png"))).isEqualTo(Reason.TOO_SMALL);
    }

    @Test
    void read_claimsManyPixels_isTooLarge() throws IOException {
      byte[] png = bytes(image(BufferedImage.TYPE_BYTE_GRAY), "png");
      ByteBuffer.wrap(png).putInt(16, 30_000).putInt(20, 30_000);
      CRC32 sum = new CRC32();
      sum.update(png, 12, 17);
      ByteBuffer.wrap(png).putInt(29, (int) sum.getValue());
      assertThat(reason(png)).isEqualTo(Reason.TOO_LARGE);
    }

    @Test
    void read_animatedPng_isAnimated() throws IOException {
      byte[] png = bytes(image(BufferedImage.TYPE_BYTE_GRAY), "png");
      byte[] chunk = {0, 0, 0, 0, 'a', 'c', 'T', 'L', 0, 0, 0, 0};
      ByteBuffer out = ByteBuffer.allocate(png.length + chunk.length);
      out.put(png, 0, 33).put(chunk).put(png, 33, png.length - 33);
      assertThat(reason(out.array())).isEqualTo(Reason.ANIMATED);
    }

    @Test
    void read_tiffOfThreePages_isNotReadSilently() throws IOException {
      Path file = folder.resolve("pages.tiff");
      ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
      try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
        writer.setOutput(out);
        writer.prepareWriteSequence(null);
        for (int page = 0; page < 3; page++) {
          writer.writeToSequence(
              new IIOImage(image(BufferedImage.TYPE_BYTE_GRAY), null, null), null);
        }
        writer.endWriteSequence();
      }
      assertThatThrownBy(() -> FILES.read(file))
          .isInstanceOf(UnreadablePicture.class)
          .hasMessageContaining("3 pages");
    }

    @Test
    void read_tiffWhosePagesRunInACircle_endsAtOnce() throws IOException {
      // Little-endian head, directory at 8 without entries, whose next directory is itself.
      byte[] circle =
          HexFormat.of().parseHex("49492a0008000000" + "0000" + "08000000" + "00000000");
      assertThat(reason(circle)).isEqualTo(Reason.BROKEN);
    }

    @Test
    void read_noFile_saysSo() {
      assertThatThrownBy(() -> FILES.read(folder.resolve("none.png")))
          .isInstanceOf(NoSuchFileException.class);
    }
  }

  @Test
  void of_wrongSize_isRefused() {
    assertThatThrownBy(() -> Picture.of(3, 3, new char[8]))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
