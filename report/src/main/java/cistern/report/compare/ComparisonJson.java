package cistern.report.compare;

import cistern.bands.BandReading;
import cistern.finding.FindingValue;
import cistern.followup.BandChange;
import cistern.followup.Change;
import cistern.followup.Comparison;
import cistern.followup.Comparison.Step;
import cistern.followup.Episode;
import cistern.followup.Remark;
import cistern.report.json.JsonLines;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;

/** A comparison as one JSON object; numbers are not rounded, changes are fractions. */
public final class ComparisonJson {

  private static final int VERSION = 1;

  private final String software;
  private final String facts;
  private final Optional<String> policy;

  private ComparisonJson(String software, String facts, Optional<String> policy) {
    this.software = software;
    this.facts = facts;
    this.policy = policy;
  }

  /**
   * A writer.
   *
   * @param software the name and version of the program
   * @param facts the names and versions of the fact tables
   * @param policy the local policy in force
   */
  public static ComparisonJson of(String software, String facts, Optional<String> policy) {
    return new ComparisonJson(software, facts, policy);
  }

  /**
   * Writes one comparison. {@code bands} is that of the last step; every step has its own in {@code
   * steps}.
   */
  public void write(JsonGenerator json, Comparison comparison) {
    json.writeStartObject();
    json.writeNumberProperty("comparison", VERSION);
    json.writeStringProperty("software", software);
    json.writeStringProperty("facts", facts);
    JsonLines.orNull(json, "policy", policy);
    JsonLines.orNull(json, "person", comparison.person());
    JsonLines.orNull(json, "days", comparison.days());
    punctures(json, comparison.episodes());
    json.writeName("changes");
    json.writeStartArray();
    comparison
        .steps()
        .forEach(step -> step.changes().forEach(change -> change(json, step, change)));
    json.writeEndArray();
    json.writeName("bands");
    bands(json, comparison.steps().getLast());
    json.writeName("steps");
    json.writeStartArray();
    comparison.steps().forEach(step -> step(json, step));
    json.writeEndArray();
    statements(json, comparison.remarks());
    json.writeEndObject();
  }

  private static void punctures(JsonGenerator json, List<Episode> episodes) {
    json.writeName("punctures");
    json.writeStartArray();
    for (Episode episode : episodes) {
      json.writeStartObject();
      json.writeStringProperty("workup", episode.workup());
      JsonLines.orNull(json, "at", episode.at().map(OffsetDateTime::toString));
      json.writeStringProperty("pairing", episode.panel().pairing().verdict().word());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void change(JsonGenerator json, Step step, Change change) {
    json.writeStartObject();
    json.writeStringProperty("code", change.code());
    json.writeStringProperty("fromWorkup", step.earlier().workup());
    json.writeStringProperty("toWorkup", step.later().workup());
    value(json, "from", change.from());
    value(json, "to", change.to());
    json.writeName("changeLimits");
    if (change.limits().isPresent()) {
      json.writeStartArray();
      json.writeNumber(change.limits().get().down());
      json.writeNumber(change.limits().get().up());
      json.writeEndArray();
    } else {
      json.writeNull();
    }
    json.writeStringProperty("verdict", change.verdict().word());
    json.writeStringProperty("note", change.note());
    JsonLines.grounds(json, change.grounds());
    json.writeEndObject();
  }

  /** A number, or null with the bounds beside it. */
  private static void value(JsonGenerator json, String name, FindingValue value) {
    switch (value) {
      case FindingValue.Point point -> json.writeNumberProperty(name, point.value());
      case FindingValue.None none -> json.writeNullProperty(name);
      case FindingValue.Bounds bounds -> {
        json.writeNullProperty(name);
        json.writeName(name + "Bounds");
        json.writeStartArray();
        json.writeNumber(bounds.lower());
        if (Double.isInfinite(bounds.upper())) {
          json.writeNull();
        } else {
          json.writeNumber(bounds.upper());
        }
        json.writeEndArray();
      }
    }
  }

  private static void step(JsonGenerator json, Step step) {
    json.writeStartObject();
    json.writeStringProperty("fromWorkup", step.earlier().workup());
    json.writeStringProperty("toWorkup", step.later().workup());
    JsonLines.orNull(json, "days", step.days());
    json.writeName("bands");
    bands(json, step);
    json.writeEndObject();
  }

  private static void bands(JsonGenerator json, Step step) {
    BandChange bands = step.bands();
    json.writeStartObject();
    JsonLines.orNull(json, "gained", bands.gained());
    JsonLines.orNull(json, "lost", bands.lost());
    json.writeStringProperty("verdict", bands.verdict().word());
    json.writeBooleanProperty("methodChanged", bands.isMethodChanged());
    reading(json, "from", bands.from());
    reading(json, "to", bands.to());
    bands
        .chances()
        .ifPresent(
            chances -> {
              json.writeNumberProperty("probabilityMore", chances.more());
              json.writeNumberProperty("probabilityFewer", chances.fewer());
            });
    json.writeEndObject();
  }

  private static void reading(JsonGenerator json, String name, BandReading reading) {
    json.writeName(name);
    json.writeStartObject();
    JsonLines.orNull(json, "csfOnly", reading.counts().csfOnly());
    json.writeStringProperty("verdict", reading.verdict().word());
    json.writeNumberProperty("cutOff", reading.cutOff());
    JsonLines.orNull(json, "method", BandChange.method(reading.report()));
    json.writeEndObject();
  }

  private static void statements(JsonGenerator json, List<Remark> remarks) {
    json.writeName("statements");
    json.writeStartArray();
    for (int i = 0; i < remarks.size(); i++) {
      json.writeStartObject();
      json.writeNumberProperty("rank", i + 1);
      json.writeStringProperty("code", remarks.get(i).code());
      json.writeStringProperty("text", remarks.get(i).text());
      JsonLines.grounds(json, remarks.get(i).grounds());
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}
