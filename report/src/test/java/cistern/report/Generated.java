package cistern.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** JSON as a generator writes it, after a parser has read all of it. */
public final class Generated {

  private static final JsonFactory FACTORY = new JsonFactory();

  private Generated() {}

  /** The text of what is written. */
  public static String of(Consumer<JsonGenerator> content) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), text)) {
      content.accept(json);
    }
    try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text.toString())) {
      while (parser.nextToken() != null) {
        assertThat(parser.currentToken()).isNotNull();
      }
    }
    return text.toString();
  }
}
