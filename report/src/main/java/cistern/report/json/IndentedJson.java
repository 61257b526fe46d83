package cistern.report.json;

import java.io.OutputStream;
import java.util.function.Consumer;
import tools.jackson.core.JsonEncoding;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultPrettyPrinter;

/** Indented JSON onto a stream that stays open. */
public final class IndentedJson {

  private static final JsonFactory FACTORY =
      JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();

  private IndentedJson() {}

  /** Writes one document with a line break after it. */
  public static void write(OutputStream out, Consumer<JsonGenerator> content) {
    try (JsonGenerator json = FACTORY.createGenerator(INDENTED, out, JsonEncoding.UTF8)) {
      content.accept(json);
      json.writeRaw('\n');
    }
  }

  private static final ObjectWriteContext INDENTED =
      new ObjectWriteContext.Base() {
        @Override
        public PrettyPrinter getPrettyPrinter() {
          return new DefaultPrettyPrinter();
        }

        @Override
        public boolean hasPrettyPrinter() {
          return true;
        }
      };
}
