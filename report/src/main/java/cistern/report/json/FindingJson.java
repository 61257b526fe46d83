package cistern.report.json;

import cistern.finding.Cut;
import cistern.finding.Finding;
import cistern.finding.FindingValue;
import cistern.finding.Uncertainty;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.OptionalDouble;
import tools.jackson.core.JsonGenerator;

/** One finding as a JSON object; what is not known is left out. */
final class FindingJson {

  private FindingJson() {}

  static void write(JsonGenerator json, Finding finding) {
    json.writeStartObject();
    json.writeStringProperty("code", finding.code().code());
    value(json, finding.value());
    json.writeStringProperty("unit", finding.code().unit().ucum());
    uncertainty(json, finding.uncertainty());
    limit(json, finding);
    finding.limitRule().ifPresent(rule -> json.writeStringProperty("limitRule", rule));
    json.writeStringProperty("verdict", finding.verdict().word());
    JsonLines.grounds(json, finding.grounds());
    JsonLines.strings(json, "inputs", finding.inputs().stream().map(Sample::code).toList());
    json.writeStringProperty("note", finding.note());
    json.writeEndObject();
  }

  private static void value(JsonGenerator json, FindingValue value) {
    switch (value) {
      case FindingValue.None none -> {}
      case FindingValue.Point point -> json.writeNumberProperty("value", point.value());
      case FindingValue.Bounds bounds -> {
        json.writeName("bounds");
        json.writeStartArray();
        bound(json, bounds.lower());
        bound(json, bounds.upper());
        json.writeEndArray();
      }
    }
  }

  private static void bound(JsonGenerator json, double end) {
    if (Double.isInfinite(end)) {
      json.writeNull();
    } else {
      json.writeNumber(end);
    }
  }

  private static void uncertainty(JsonGenerator json, Uncertainty uncertainty) {
    uncertainty
        .interval95()
        .ifPresent(
            interval -> {
              json.writeName("interval95");
              json.writeStartArray();
              json.writeNumber(interval.lower());
              json.writeNumber(interval.upper());
              json.writeEndArray();
            });
    uncertainty
        .probabilityAbove()
        .ifPresent(probability -> json.writeNumberProperty("probabilityAbove", probability));
  }

  private static void limit(JsonGenerator json, Finding finding) {
    json.writeName("limit");
    json.writeStartObject();
    JsonLines.orNull(json, "lower", at(finding.limits().within()));
    JsonLines.orNull(json, "upper", at(finding.limits().above()));
    finding
        .limits()
        .borderline()
        .ifPresent(cut -> json.writeNumberProperty("borderline", cut.at()));
    json.writeEndObject();
  }

  private static OptionalDouble at(Optional<Cut> cut) {
    return cut.map(c -> OptionalDouble.of(c.at())).orElse(OptionalDouble.empty());
  }
}
