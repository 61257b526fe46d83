package cistern.clinic.casework;

import cistern.bands.BandCounts;
import cistern.bands.BandReport;
import cistern.clinic.status.OpenCase;
import java.util.Optional;
import java.util.OptionalInt;

/** What the gel of a case says beside a field in which its bands are typed. */
final class GelHint {

  private GelHint() {}

  /** The count of the gel for a field; empty where no gel of the case was read. */
  static Optional<String> of(String key, OpenCase open) {
    Optional<BandReport.ReadFromGel> gel =
        switch (open.interpretation().bands().report()) {
          case BandReport.ReadFromGel read -> Optional.of(read);
          case BandReport.Counted counted -> counted.gel();
          case BandReport.NotReported none -> Optional.empty();
          case BandReport.Patterned patterned -> Optional.empty();
          case BandReport.Concluded concluded -> Optional.empty();
          case BandReport.GelNamed named -> Optional.empty();
        };
    return gel.flatMap(
        read ->
            count(key, read.counts()).stream()
                .mapToObj(count -> count + " in the picture" + confirmed(read))
                .findFirst());
  }

  private static String confirmed(BandReport.ReadFromGel gel) {
    return gel.confirmedBy()
        .map(name -> ", confirmed by " + name + ": another count would end that.")
        .orElse(", not confirmed.");
  }

  private static OptionalInt count(String key, BandCounts counts) {
    return switch (key) {
      case "bands.csfOnly" -> counts.csfOnly();
      case "bands.shared" -> counts.shared();
      default -> counts.serumOnly();
    };
  }
}
