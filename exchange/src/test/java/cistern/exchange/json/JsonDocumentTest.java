package cistern.exchange.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JsonDocumentTest {

  private static final InputLimits LIMITS = InputLimits.of(Facts.standard());

  private final InputProblems problems = new InputProblems();

  private Optional<Json.Structure> read(byte[] bytes) {
    return JsonDocument.read(new ByteArrayInputStream(bytes), LIMITS, problems);
  }

  private Optional<Json.Structure> read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  private void refused(InputTrouble trouble, String place) {
    assertThat(problems.invalid())
        .extracting(InputProblem::trouble, InputProblem::place)
        .containsExactly(tuple(trouble, place));
  }

  @Nested
  class Texts {

    @Test
    void read_everyKindOfValue_keepsLiterals() {
      Json.Structure root =
          read("{\"a\":[1.50,-0,1e999,true,false,null,{\"é\":\"\\u00b5\"}]}").orElseThrow();
      assertThat(root.toString())
          .contains("1.50", "-0", "1e999", "true", "false", "Nothing", "é", "µ");
      assertThat(problems.isValid()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "{\"a\": 1,5}|a (line 1, column 10)",
          "{\"a\": 007}|a (line 1, column 7)",
          "{'a': 1}|line 1, column 2",
          "{\"a\": 1,}|a (line 1, column 9)",
          "{\"a\": .5}|a (line 1, column 7)",
          "{\"a\": tru}|a (line 1, column 10)",
          "not json|line 1, column 4",
          "%PDF-1.7|line 1, column 1",
        })
    void read_notJson_namesLineAndColumn(String text, String place) {
      assertThat(read(text)).isEmpty();
      assertThat(problems.invalid()).hasSize(1);
      InputProblem problem = problems.invalid().getFirst();
      assertThat(problem.trouble()).isEqualTo(InputTrouble.NOT_JSON);
      assertThat(problem.place()).startsWith(place.replaceAll("\\d+\\)?$", ""));
    }

    @Test
    void read_decimalComma_pointsBehindTheComma() {
      read("{\n  \"a\": 1,5\n}");
      refused(InputTrouble.NOT_JSON, "a (line 2, column 10)");
    }

    @ParameterizedTest
    @ValueSource(strings = {"{", "{\"a\"", "{\"a\":", "{\"a\":[1,", "{\"a\":\"b", "[", "{\"a\":{}"})
    void read_truncated_saysThatAPartIsMissing(String text) {
      assertThat(read(text)).isEmpty();
      assertThat(problems.invalid())
          .extracting(InputProblem::trouble)
          .containsExactly(InputTrouble.ENDS_EARLY);
      assertThat(problems.invalid().getFirst().place()).contains("line 1, column ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"{} {}", "{}]", "{}x", "{}\n\n,"})
    void read_trailingGarbage_isRefused(String text) {
      assertThat(read(text)).isEmpty();
      assertThat(problems.invalid())
          .extracting(InputProblem::trouble)
          .containsExactly(InputTrouble.MORE_AFTER_END);
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "[{}]", "1", "\"a\"", "null", "true"})
    void read_otherRoot_isRefused(String text) {
      assertThat(read(text)).isEmpty();
      refused(InputTrouble.NOT_AN_OBJECT, "");
    }

    @Test
    void read_notANumber_isNotedAtItsPathAndReadingGoesOn() {
      assertThat(read("{\"a\":[NaN,-Infinity,Infinity],\"b\":1,\"b\":2}")).isPresent();
      assertThat(problems.invalid())
          .extracting(InputProblem::trouble, InputProblem::place)
          .containsExactly(
              tuple(InputTrouble.NOT_FINITE, "a[0]"),
              tuple(InputTrouble.NOT_FINITE, "a[1]"),
              tuple(InputTrouble.NOT_FINITE, "a[2]"),
              tuple(InputTrouble.TWICE, "b"));
    }

    @ParameterizedTest
    @ValueSource(
        strings = {"{\"a\":\"\\ud800\"}", "{\"a\":\"x\\udc00y\"}", "{\"a\":\"\\udc00\\ud800\"}"})
    void read_loneSurrogate_isRefused(String text) {
      read(text);
      refused(InputTrouble.BROKEN_TEXT, "a");
    }

    @Test
    void read_pairedSurrogate_isRead() {
      assertThat(read("{\"a\":\"\\ud83d\\ude00\"}")).isPresent();
      assertThat(problems.isValid()).isTrue();
    }

    @Test
    void read_strangeNames_areEscapedInThePlace() {
      read("{\"a b\":{\"\\u001b[31m\\u202e\":NaN}}");
      refused(InputTrouble.NOT_FINITE, "[\"a b\"][\"\\u001b[#m\\u202e\"]");
    }
  }

  @Nested
  class Encodings {

    @Test
    void read_byteOrderMark_isSkipped() {
      assertThat(read("\uFEFF{\"a\":1}")).isPresent();
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE", "UTF-32", "UTF-32LE"})
    void read_otherUnicode_isNamed(String charset) {
      assertThat(read("{\"a\":1}".getBytes(Charset.forName(charset)))).isEmpty();
      refused(InputTrouble.OTHER_ENCODING, "");
      assertThat(problems.invalid().getFirst().text()).contains("UTF-");
    }

    @Test
    void read_latin1_namesTheLine() {
      assertThat(read("{\n\"a\":\n\"é\"}".getBytes(StandardCharsets.ISO_8859_1))).isEmpty();
      refused(InputTrouble.NOT_UTF_8, "");
      assertThat(problems.invalid().getFirst().text()).contains("line 3");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\n\n\t "})
    void read_blank_isEmpty(String text) {
      assertThat(read(text)).isEmpty();
      refused(InputTrouble.EMPTY, "");
    }
  }

  @Nested
  class Sizes {

    @Test
    void read_deepNesting_isRefused() {
      assertThat(read("{\"a\":" + "[".repeat(1_000_000))).isEmpty();
      assertThat(problems.invalid())
          .extracting(InputProblem::trouble)
          .containsExactly(InputTrouble.TOO_DEEP);
    }

    @Test
    void read_manyValues_isRefused() {
      assertThat(read("{\"a\":[" + "0,".repeat(LIMITS.values()) + "0]}")).isEmpty();
      assertThat(problems.invalid())
          .extracting(InputProblem::trouble)
          .containsExactly(InputTrouble.TOO_MANY_VALUES);
    }

    @Test
    void read_fiftyMegabytes_isRefused() {
      byte[] bytes = new byte[50 << 20];
      Arrays.fill(bytes, (byte) ' ');
      assertThat(read(bytes)).isEmpty();
      refused(InputTrouble.TOO_LARGE, "");
    }

    @Test
    void read_longTextInsideTheLimit_isRead() {
      assertThat(read("{\"a\":\"" + "x".repeat(8 << 20) + "\"}")).isPresent();
    }
  }

  @Nested
  class Paths {

    @Test
    void read_folder_saysSo(@TempDir Path folder) {
      assertThat(JsonDocument.read(folder, LIMITS, problems)).isEmpty();
      assertThat(problems.invalid().getFirst().text()).contains("folder");
    }

    @Test
    void read_missingFile_saysSo(@TempDir Path folder) {
      assertThat(JsonDocument.read(folder.resolve("x.json"), LIMITS, problems)).isEmpty();
      assertThat(problems.invalid().getFirst().text()).contains("no such file");
    }

    @Test
    void read_symbolicLink_isFollowed(@TempDir Path folder) throws IOException {
      Path file = Files.writeString(folder.resolve("a.json"), "{}");
      Path link = Files.createSymbolicLink(folder.resolve("b.json"), file);
      assertThat(JsonDocument.read(link, LIMITS, problems)).isPresent();
    }

    @Test
    void read_brokenStream_isUnreadable() {
      InputStream broken =
          new InputStream() {
            @Override
            public int read() throws IOException {
              throw new IOException("secret");
            }

            @Override
            public int read(byte[] bytes, int offset, int length) throws IOException {
              return read();
            }
          };
      assertThat(JsonDocument.read(broken, LIMITS, problems)).isEmpty();
      assertThat(problems.invalid().getFirst().text()).doesNotContain("secret");
    }
  }
}
