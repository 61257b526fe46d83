package cistern.report.json;

import cistern.finding.Finding;
import cistern.finding.Threshold;
import cistern.finding.Uncertainty;
import cistern.measurement.Interval;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.OptionalDouble;

/** One finding as a JSON object; what is not known is left out. */
final class FindingJson {

  private FindingJson() {}

  static void write(JsonObject json, Finding finding) {
    json.with("code", finding.code().code());
    finding.value().ifPresent(value -> value(json, value));
    json.with("unit", finding.code().unit().ucum());
    uncertainty(json, finding.uncertainty());
    limit(json, finding);
    finding.limitRule().ifPresent(rule -> json.with("limitRule", rule));
    json.with("verdict", finding.verdict().word());
    json.grounds(finding.grounds());
    json.strings("inputs", finding.inputs(), Sample::code);
    json.with("note", finding.note());
  }

  private static void value(JsonObject json, Interval value) {
    if (value.isExact()) {
      json.with("value", value.exactly());
    } else {
      json.numbers("bounds", value.lower(), value.upper());
    }
  }

  private static void uncertainty(JsonObject json, Uncertainty uncertainty) {
    uncertainty
        .interval95()
        .ifPresent(interval -> json.numbers("interval95", interval.lower(), interval.upper()));
    uncertainty
        .probabilityAbove()
        .ifPresent(probability -> json.with("probabilityAbove", probability));
  }

  private static void limit(JsonObject json, Finding finding) {
    json.object(
        "limit",
        item -> {
          item.with("lower", at(finding.limits().within()));
          item.with("upper", at(finding.limits().above()));
          finding.limits().borderline().ifPresent(cut -> item.with("borderline", cut.at()));
        });
  }

  private static OptionalDouble at(Optional<Threshold> cut) {
    return cut.map(c -> OptionalDouble.of(c.at())).orElse(OptionalDouble.empty());
  }
}
