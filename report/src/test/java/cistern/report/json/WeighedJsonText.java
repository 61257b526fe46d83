package cistern.report.json;

import cistern.interpretation.Interpretation;
import java.io.StringWriter;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** An interpretation as one line of JSON, for tests. */
public final class WeighedJsonText {

  private WeighedJsonText() {}

  /** The JSON of an interpretation. */
  public static String of(Interpretation interpretation) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(ObjectWriteContext.empty(), text)) {
      InterpretationJson.of("Cistern test").write(json, interpretation);
    }
    return text.toString();
  }
}
