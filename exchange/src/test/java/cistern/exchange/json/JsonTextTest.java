package cistern.exchange.json;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.fact.Facts;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class JsonTextTest {

  private static final String ODD =
      "{\"a\":[1.50,-2e-7,true,null,[],{}],\"b c\":\"\\\"\\\\\\n\\t\\u0001µκ\",\"z\":{\"y\":3.00}}";

  @Test
  void of_whatWasRead_readsTheSameAgain() {
    Json.Structure once = read(ODD);
    String text = JsonText.of(once);

    assertThat(read(text)).isEqualTo(once);
    assertThat(text).contains("1.50").contains("3.00").endsWith("}\n");
    assertThat(JsonText.of(read(text))).isEqualTo(text);
  }

  private static Json.Structure read(String text) {
    InputProblems problems = new InputProblems();
    return JsonDocument.read(
            new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
            InputLimits.of(Facts.standard()),
            problems)
        .orElseThrow();
  }
}
