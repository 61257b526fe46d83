package cistern.report.json;

import cistern.finding.Cut;
import cistern.finding.Finding;
import cistern.finding.FindingValue;
import cistern.finding.Uncertainty;
import cistern.measurement.Sample;
import java.util.Optional;
import java.util.OptionalDouble;

/** One finding as a JSON object; what is not known is left out. */
final class FindingJson {

  private FindingJson() {}

  static void write(JsonObject json, Finding finding) {
    json.with("code", finding.code().code());
    value(json, finding.value());
    json.with("unit", finding.code().unit().ucum());
    uncertainty(json, finding.uncertainty());
    limit(json, finding);
    finding.limitRule().ifPresent(rule -> json.with("limitRule", rule));
    json.with("verdict", finding.verdict().word());
    json.grounds(finding.grounds());
    json.strings("inputs", finding.inputs().stream().map(Sample::code).toList());
    json.with("note", finding.note());
  }

  private static void value(JsonObject json, FindingValue value) {
    switch (value) {
      case FindingValue.None none -> {}
      case FindingValue.Point point -> json.with("value", point.value());
      case FindingValue.Bounds bounds -> json.numbers("bounds", bounds.lower(), bounds.upper());
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

  private static OptionalDouble at(Optional<Cut> cut) {
    return cut.map(c -> OptionalDouble.of(c.at())).orElse(OptionalDouble.empty());
  }
}
