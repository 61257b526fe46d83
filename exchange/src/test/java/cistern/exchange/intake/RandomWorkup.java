package cistern.exchange.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Work-ups of any numbers, signs, units, limits, methods and offsets; invented data. */
final class RandomWorkup {

  private static final List<String> SAMPLES =
      List.of(
          "albumin.csf mg/L",
          "igg.csf mg/dL",
          "kappa-flc.csf ug/mL",
          "leukocytes.csf 10*6/L",
          "lactate.csf mmol/L",
          "lymphocytes.csf %",
          "measles-igg.csf m[IU]/mL",
          "albumin.serum umol/L",
          "igg.serum g/L",
          "measles-igg.serum m[IU]/mL",
          "hematocrit.blood 1");
  private static final String SIGNS = "<>|^&~\\ÄμF#.RST -0123";

  private RandomWorkup() {}

  static String of(Random random) {
    List<String> results = new ArrayList<>();
    for (String sample : SAMPLES) {
      if (random.nextInt(4) > 0) {
        results.add(result(sample, random));
      }
    }
    return ("{\"id\":\"r\",\"person\":{\"id\":\"p\"},\"draws\":{\"csf\":{\"at\":\"%s\"},"
            + "\"serum\":{\"at\":\"%s\"}},\"results\":[%s]}")
        .formatted(time(random), time(random), String.join(",", results));
  }

  private static String result(String sample, Random random) {
    String[] parts = sample.split("[. ]", 3);
    String kind = parts[0].endsWith("t") || parts[2].equals("%") ? "value" : kind(random);
    StringBuilder text = new StringBuilder();
    text.append(
        "{\"analyte\":\"%s\",\"in\":\"%s\",\"%s\":%s,\"unit\":\"%s\""
            .formatted(parts[0], parts[1], kind, number(random), parts[2]));
    if (random.nextBoolean()) {
      text.append(",\"assay\":\"").append(words(random)).append('"');
    }
    if (random.nextBoolean()) {
      text.append(",\"at\":\"").append(time(random)).append('"');
    }
    if (random.nextInt(3) == 0) {
      text.append(",\"status\":\"").append(random.nextBoolean() ? "amended" : "preliminary");
      text.append('"');
    }
    if (random.nextBoolean()) {
      text.append(",\"reportedLimit\":\"").append(words(random)).append('"');
    }
    return text.append('}').toString();
  }

  private static String kind(Random random) {
    return List.of("value", "value", "below", "above").get(random.nextInt(4));
  }

  /** Under one, so that it may be a share as well; sometimes with a power of ten. */
  private static String number(Random random) {
    int decimals = 1 + random.nextInt(6);
    String digits =
        ("0.%0" + decimals + "d").formatted(1 + random.nextInt((int) Math.pow(10, decimals) - 1));
    return switch (random.nextInt(4)) {
      case 0 -> digits + "e-" + random.nextInt(4);
      case 1 -> digits.substring(2).replaceFirst("^0+", "") + "E-" + decimals;
      default -> digits;
    };
  }

  private static String words(Random random) {
    StringBuilder text = new StringBuilder("m");
    for (int i = random.nextInt(9); i > 0; i--) {
      char sign = SIGNS.charAt(random.nextInt(SIGNS.length()));
      text.append(sign == '\\' ? "\\\\" : String.valueOf(sign));
    }
    return text.append('e').toString();
  }

  private static String time(Random random) {
    int quarters = random.nextInt(4 * 26) - 4 * 12;
    return String.format(
        Locale.ROOT,
        "2031-03-02T%02d:%02d:%02d%s%s%02d:%02d",
        random.nextInt(24),
        random.nextInt(60),
        1 + random.nextInt(59),
        random.nextBoolean() ? "" : "." + (1 + random.nextInt(9)),
        quarters < 0 ? "-" : "+",
        Math.abs(quarters) / 4,
        Math.abs(quarters) % 4 * 15);
  }
}
