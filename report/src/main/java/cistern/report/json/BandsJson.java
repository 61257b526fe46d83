package cistern.report.json;

import cistern.bands.BandPattern;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import java.util.Optional;
import java.util.OptionalInt;

/** The bands as a JSON object. */
final class BandsJson {

  private BandsJson() {}

  static void write(JsonObject json, BandReading bands) {
    json.object(
        "bands",
        item -> {
          item.with("csfOnly", bands.counts().csfOnly());
          item.with("shared", bands.counts().shared());
          item.with("serumOnly", bands.counts().serumOnly());
          item.with("pattern", number(bands.pattern()));
          item.with("verdict", bands.verdict().word());
          item.with("cutOff", bands.cutOff());
          if (bands.isReported()) {
            item.with("confirmed", bands.isConfirmed());
          } else {
            item.nothing("confirmed");
          }
          gel(bands.report()).ifPresent(gel -> reading(item, gel));
          item.grounds(bands.grounds());
        });
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

  private static void reading(JsonObject json, BandReport.ReadFromGel gel) {
    json.object(
        "gelReading",
        item -> {
          item.with("file", gel.file());
          item.with("csfOnly", gel.counts().csfOnly());
          item.with("shared", gel.counts().shared());
          item.with("serumOnly", gel.counts().serumOnly());
          item.with("pattern", number(gel.pattern()));
          item.with("probabilityPositive", gel.probabilityPositive());
          item.numbers(
              "csfOnlyDistribution",
              gel.csfOnlyDistribution().stream().mapToDouble(Double::doubleValue).toArray());
          item.with("confirmedBy", gel.confirmedBy());
        });
  }
}
