package cistern.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.image.Picture;
import cistern.gel.lanes.LanePlan;
import cistern.gel.reading.GelReading;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** How much memory a large scan takes, in a process of its own. */
class MemoryTest {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;

  /** The aim: 512 MB, in kilobytes. */
  private static final long MOST = 512_000_000 / 1024;

  @TempDir private Path folder;

  @Test
  @EnabledOnOs(OS.LINUX)
  void read_sixThousandByFourThousandIn16Bits_needsLessThan512Megabytes() throws Exception {
    Path tiff = folder.resolve("large.tif");
    write(tiff);
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                MemoryTest.class.getName(),
                tiff.toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    List<String> lines = said.lines().toList();
    assertThat(lines.getFirst()).isEqualTo("3 0 1 2");
    assertThat(Long.parseLong(lines.getLast())).isBetween(48_000L, MOST);
  }

  /** Reads a file and says the counts of CSF-only bands, then the most memory it took, in kB. */
  public static void main(String[] file) throws IOException {
    LanePlan plan = LanePlan.parse("csf,serum,csf,serum,csf,serum,csf,serum");
    GelReading reading = new GelReader(GelFacts.standard()).read(Path.of(file[0]), plan);
    List<String> counts =
        reading.pairs().stream()
            .map(p -> String.valueOf(p.counts().orElseThrow().csfOnly()))
            .toList();
    System.out.println(String.join(" ", counts));
    String most =
        Files.readAllLines(Path.of("/proc/self/status")).stream()
            .filter(line -> line.startsWith("VmHWM:"))
            .findFirst()
            .orElseThrow();
    System.out.println(most.replaceAll("[^0-9]", ""));
  }

  /** A big-endian TIFF of one strip (TIFF 6.0, part 1). */
  private static void write(Path tiff) throws IOException {
    Picture gel =
        new PaintedGel(135)
            .person(330, 200, 280, 430)
            .person(380)
            .person(300, 250)
            .person(350, 300, 460)
            .toPicture();
    int[][] entries = {
      {256, WIDTH},
      {257, HEIGHT},
      {258, 16},
      {259, 1},
      {262, 1},
      {273, 8},
      {277, 1},
      {278, HEIGHT},
      {279, 2 * WIDTH * HEIGHT}
    };
    try (OutputStream file = Files.newOutputStream(tiff);
        DataOutputStream out = new DataOutputStream(new java.io.BufferedOutputStream(file))) {
      out.writeInt(0x4D4D002A);
      out.writeInt(8 + 2 * WIDTH * HEIGHT);
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH; x++) {
          out.writeChar(gel.at(x * gel.width() / WIDTH, y * gel.height() / HEIGHT));
        }
      }
      out.writeShort(entries.length);
      for (int[] entry : entries) {
        out.writeShort(entry[0]);
        boolean isShort = entry[1] < 1 << 8 && entry[0] != 273;
        out.writeShort(isShort ? 3 : 4);
        out.writeInt(1);
        out.writeInt(isShort ? entry[1] << 16 : entry[1]);
      }
      out.writeInt(0);
    }
  }
}
