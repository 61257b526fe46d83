package cistern.exchange.intake;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.lab.LocalMapping;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Inputs damaged by chance, with fixed seeds: every one is read or refused, and none is a fault.
 */
class IntakeFuzzTest {

  private static final List<String> PIECES =
      List.of(
          "|",
          "^",
          "~",
          "\\",
          "&",
          "\r",
          "\n",
          "\"",
          ";",
          ",",
          "\t",
          "{",
          "}",
          "[",
          "]",
          "<",
          ">",
          "\u0000",
          "é",
          "\ufeff",
          "1e999",
          "-",
          "OBX|",
          "PID|",
          "SPM|",
          "NaN",
          "<!DOCTYPE x>",
          "\"resourceType\":",
          "#p",
          "2031",
          "%",
          "\\X",
          "null",
          "MSH|^~\\&|");

  private static byte[] example(String name) throws IOException {
    Path root = Path.of(System.getProperty("cistern.root", ".."));
    return Files.readAllBytes(root.resolve("examples/exchange").resolve(name));
  }

  @ParameterizedTest
  @ValueSource(strings = {"report.hl7", "report.fhir.json", "report.csv"})
  void read_damagedReport_isReadOrRefused(String name) throws IOException {
    fuzz(example(name), 100);
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(strings = {"report.hl7", "report.fhir.json", "report.csv"})
  void read_damagedReportManyTimes_isReadOrRefused(String name) throws IOException {
    fuzz(example(name), 50_000);
  }

  private static void fuzz(byte[] whole, int times) {
    SplittableRandom random = new SplittableRandom(20_310_302L);
    for (int i = 0; i < times; i++) {
      byte[] damaged = damaged(whole, random);
      Read read = Read.of(damaged, LocalMapping.NONE);
      assertThat(read.count() > 0 || !read.refusals().isEmpty()).as("damage %d", i).isTrue();
    }
  }

  private static byte[] damaged(byte[] whole, SplittableRandom random) {
    StringBuilder text = new StringBuilder(new String(whole, StandardCharsets.ISO_8859_1));
    int count = 1 + random.nextInt(6);
    for (int i = 0; i < count && text.length() > 1; i++) {
      int at = random.nextInt(text.length());
      switch (random.nextInt(4)) {
        case 0 -> text.deleteCharAt(at);
        case 1 -> text.insert(at, PIECES.get(random.nextInt(PIECES.size())));
        case 2 -> text.setCharAt(at, (char) random.nextInt(256));
        default -> {
          int end = Math.min(text.length(), at + random.nextInt(200));
          text.insert(random.nextInt(text.length()), text.substring(at, end));
        }
      }
    }
    boolean isCut = random.nextInt(8) == 0;
    String damaged = isCut ? text.substring(0, random.nextInt(text.length())) : text.toString();
    return damaged.getBytes(StandardCharsets.ISO_8859_1);
  }
}
