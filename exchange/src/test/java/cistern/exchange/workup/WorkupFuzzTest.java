package cistern.exchange.workup;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.exchange.json.InputProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Work-ups whose parts are exchanged for others, so that they stay JSON more often than not. */
class WorkupFuzzTest {

  /** Names, texts, numbers, words and signs. */
  private static final Pattern TOKEN =
      Pattern.compile("\"[^\"]*\"|-?\\d[\\d.eE+-]*|true|false|null|[{}\\[\\]:,]");

  private static final List<String> STRANGE =
      List.of(
          "null",
          "true",
          "-1",
          "0",
          "1e400",
          "-0.0",
          "NaN",
          "9e999999999",
          "1e-999999999",
          "123456789012345678901234567890",
          "{}",
          "[]",
          "[[]]",
          "{\"a\":{}}",
          "\"\"",
          "\" \"",
          "\"mg/L\"",
          "\"10*99/L\"",
          "\"(((m\"",
          "\"µg/mL\"",
          "\"[IU]/mL\"",
          "\"m+\"",
          "\"1/0\"",
          "\"yes\"",
          "\"serum\"",
          "\"albumin\"",
          "\"2031-03-02T10:15:00Z\"",
          "\"\\ud800\"",
          "\"\\u0000\"",
          ",",
          ":",
          "}",
          "]",
          "");

  private static void checkMany(long seed, int files) {
    Random draw = new Random(seed);
    List<String> tokens = tokens();
    int understood = 0;
    for (int i = 0; i < files; i++) {
      String text = mutated(tokens, draw);
      switch (WorkupText.read(text)) {
        case WorkupReading.Understood read -> {
          understood++;
          assertThat(read.workup().id()).matches("[A-Za-z0-9._-]{1,64}");
        }
        case WorkupReading.NotValid notValid -> {
          assertThat(notValid.problems()).as(text).isNotEmpty();
          assertThat(notValid.problems()).extracting(InputProblem::text).doesNotContain("");
        }
      }
    }
    assertThat(understood).isBetween(1, files - 1);
  }

  private static List<String> tokens() {
    List<String> tokens = new ArrayList<>();
    Matcher matcher = TOKEN.matcher(WorkupText.FULL);
    while (matcher.find()) {
      tokens.add(matcher.group());
    }
    return tokens;
  }

  private static String mutated(List<String> tokens, Random draw) {
    List<String> changed = new ArrayList<>(tokens);
    for (int k = 0; k <= draw.nextInt(3); k++) {
      int at = draw.nextInt(changed.size());
      switch (draw.nextInt(4)) {
        case 0 -> changed.remove(at);
        case 1 -> changed.add(at, changed.get(draw.nextInt(changed.size())));
        case 2 -> changed.set(at, changed.get(draw.nextInt(changed.size())));
        default -> changed.set(at, STRANGE.get(draw.nextInt(STRANGE.size())));
      }
    }
    return String.join(" ", changed);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void read_exchangedParts_isEitherUnderstoodOrRefusedWithReasons(long seed) {
    checkMany(seed, 2_500);
  }

  @Test
  @Tag("long")
  void read_exchangedParts_manyTimes_isEitherUnderstoodOrRefusedWithReasons() {
    checkMany(20_311, 500_000);
  }

  /** Every text of a patient that a file may hold is one that no message repeats. */
  @Test
  void read_secretsEverywhere_repeatsNoneOfThem() {
    String secret = "Q7secretQ7";
    for (String token : tokens()) {
      if (token.startsWith("\"")) {
        continue;
      }
      String text = WorkupText.FULL.replaceFirst(Pattern.quote(token), "\"" + secret + "\"");
      assertThat(WorkupText.refused(text))
          .extracting(InputProblem::toText)
          .noneMatch(line -> line.contains(secret));
    }
    Matcher value = Pattern.compile(": *\"([^\"]*)\"").matcher(WorkupText.FULL);
    while (value.find()) {
      String text =
          WorkupText.FULL.substring(0, value.start(1))
              + secret
              + WorkupText.FULL.substring(value.end(1));
      assertThat(WorkupText.refused(text))
          .filteredOn(p -> !p.place().endsWith(".unit"))
          .extracting(InputProblem::toText)
          .noneMatch(line -> line.contains(secret));
    }
  }
}
