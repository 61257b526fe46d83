package cistern.report.json;

import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import java.util.Optional;
import java.util.OptionalInt;
import tools.jackson.core.JsonGenerator;

/** The bands as a JSON object. */
final class BandsJson {

  private BandsJson() {}

  static void write(JsonGenerator json, BandReading bands) {
    json.writeName("bands");
    json.writeStartObject();
    JsonLines.orNull(json, "csfOnly", bands.counts().csfOnly());
    JsonLines.orNull(json, "shared", bands.counts().shared());
    JsonLines.orNull(json, "serumOnly", bands.counts().serumOnly());
    JsonLines.orNull(json, "pattern", number(bands.pattern()));
    json.writeStringProperty("verdict", bands.verdict().word());
    json.writeNumberProperty("cutOff", bands.cutOff());
    if (bands.isReported()) {
      json.writeBooleanProperty("confirmed", bands.isConfirmed());
    } else {
      json.writeNullProperty("confirmed");
    }
    gel(bands.report()).ifPresent(gel -> reading(json, gel));
    JsonLines.grounds(json, bands.grounds());
    json.writeEndObject();
  }

  private static OptionalInt number(Optional<BandPattern> pattern) {
    return pattern.map(p -> OptionalInt.of(p.number())).orElse(OptionalInt.empty());
  }

  private static Optional<BandReport.ReadFromGel> gel(BandReport report) {
    return switch (report) {
      case BandReport.ReadFromGel gel -> Optional.of(gel);
      case BandReport.Counted counted -> counted.gel();
      case BandReport.NotReported none -> Optional.empty();
      case BandReport.GelNamed named -> Optional.empty();
      case BandReport.Patterned patterned -> Optional.empty();
      case BandReport.Concluded concluded -> Optional.empty();
    };
  }

  private static void reading(JsonGenerator json, BandReport.ReadFromGel gel) {
    json.writeName("gelReading");
    json.writeStartObject();
    json.writeStringProperty("file", gel.file());
    JsonLines.orNull(json, "csfOnly", gel.counts().csfOnly());
    JsonLines.orNull(json, "shared", gel.counts().shared());
    JsonLines.orNull(json, "serumOnly", gel.counts().serumOnly());
    JsonLines.orNull(json, "pattern", number(gel.pattern()));
    JsonLines.orNull(json, "probabilityPositive", gel.probabilityPositive());
    json.writeName("csfOnlyDistribution");
    json.writeStartArray();
    gel.csfOnlyDistribution().forEach(json::writeNumber);
    json.writeEndArray();
    JsonLines.orNull(json, "confirmedBy", gel.confirmedBy());
    json.writeEndObject();
  }
}
