package cistern.gel.reading;

import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import cistern.gel.reading.LaneReading.BandMark;
import java.io.StringWriter;
import java.util.List;
import java.util.OptionalInt;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** Writes readings as JSON: one object for one picture, an array for several. */
public final class ReadingJson {
  private static final JsonFactory FACTORY = new JsonFactory();
  private final JsonGenerator json;

  private ReadingJson(JsonGenerator json) {
    this.json = json;
  }

  /** The text for some readings: an array when there were several pictures, else one object. */
  public static String toJson(List<GelReading> readings, boolean isSeveral) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), text)) {
      ReadingJson writer = new ReadingJson(json);
      if (isSeveral) {
        json.writeStartArray();
        readings.forEach(writer::reading);
        json.writeEndArray();
      } else {
        readings.forEach(writer::reading);
      }
    }
    return text.append('\n').toString();
  }

  private void reading(GelReading r) {
    json.writeStartObject();
    json.writeNumberProperty("reading", 1);
    json.writeName("image");
    json.writeStartObject();
    json.writeStringProperty("file", r.picture().file());
    json.writeNumberProperty("width", r.picture().width());
    json.writeNumberProperty("height", r.picture().height());
    json.writeStringProperty("polarity", word(r.picture().polarity()));
    json.writeStringProperty("lanes", word(r.picture().posture()));
    json.writeEndObject();
    json.writeName("lanes");
    json.writeStartArray();
    r.lanes().forEach(this::lane);
    json.writeEndArray();
    json.writeName("pairs");
    json.writeStartArray();
    r.pairs().forEach(this::pair);
    json.writeEndArray();
    problems(r.problems());
    json.writeEndObject();
  }

  private static String word(Polarity polarity) {
    return switch (polarity) {
      case DARK_ON_LIGHT -> "dark-on-light";
      case LIGHT_ON_DARK -> "light-on-dark";
    };
  }

  private static String word(Posture posture) {
    return switch (posture) {
      case UPRIGHT -> "upright";
      case ACROSS -> "across";
    };
  }

  private void lane(LaneReading l) {
    json.writeStartObject();
    json.writeNumberProperty("index", l.index());
    json.writeStringProperty("kind", l.kind().word());
    number("pair", l.pair());
    json.writeNumberProperty("xCentre", l.xCentre());
    json.writeNumberProperty("width", l.width());
    json.writeStringProperty("quality", l.quality().word());
    problems(l.problems());
    json.writeName("bands");
    json.writeStartArray();
    l.bands().forEach(this::band);
    json.writeEndArray();
    json.writeNumberProperty("slope", l.slope());
    json.writeStringProperty("place", l.isPlaced() ? "given" : "found");
    json.writeEndObject();
  }

  private void band(BandMark b) {
    json.writeStartObject();
    json.writeNumberProperty("y", b.y());
    json.writeNumberProperty("height", b.height());
    json.writeNumberProperty("strength", b.strength());
    number("matched", b.matched());
    json.writeNumberProperty("probability", b.probability());
    json.writeStringProperty("reason", b.reason());
    json.writeEndObject();
  }

  private void pair(PairReading p) {
    json.writeStartObject();
    json.writeNumberProperty("pair", p.pair());
    number("csfLane", p.csfLane());
    number("serumLane", p.serumLane());
    p.counts().ifPresentOrElse(this::counts, this::noCounts);
    number("pattern", p.pattern().map(b -> OptionalInt.of(b.number())).orElse(OptionalInt.empty()));
    json.writeStringProperty("verdict", p.verdict().word());
    json.writeBooleanProperty("needsReview", p.needsReview());
    json.writeName("review");
    json.writeStartArray();
    p.review().forEach(json::writeString);
    json.writeEndArray();
    problems(p.problems());
    json.writeEndObject();
  }

  private void counts(PairReading.Counts c) {
    json.writeNumberProperty("csfOnly", c.csfOnly());
    json.writeNumberProperty("shared", c.shared());
    json.writeNumberProperty("serumOnly", c.serumOnly());
    numbers("probabilityOfPattern", c.probabilityOfPattern());
    numbers("csfOnlyDistribution", c.csfOnlyDistribution());
    json.writeNumberProperty("probabilityPositive", c.probabilityPositive());
  }

  private void noCounts() {
    for (String name :
        List.of(
            "csfOnly",
            "shared",
            "serumOnly",
            "probabilityOfPattern",
            "csfOnlyDistribution",
            "probabilityPositive")) {
      json.writeNullProperty(name);
    }
  }

  private void problems(List<GelProblem> problems) {
    json.writeName("problems");
    json.writeStartArray();
    for (GelProblem p : problems) {
      json.writeStartObject();
      json.writeStringProperty("code", p.code().word());
      json.writeStringProperty("text", p.text());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void numbers(String name, List<Double> values) {
    json.writeName(name);
    json.writeStartArray();
    values.forEach(json::writeNumber);
    json.writeEndArray();
  }

  private void number(String name, OptionalInt value) {
    if (value.isPresent()) {
      json.writeNumberProperty(name, value.getAsInt());
    } else {
      json.writeNullProperty(name);
    }
  }
}
