package cistern.clinic.status;

import cistern.bands.BandCounts;
import cistern.bands.BandReading;
import cistern.bands.BandReport;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Counts that somebody typed against those of the gel, which nobody has confirmed since.
 *
 * @param typed CSF-only bands as typed
 * @param read CSF-only bands as read from the gel
 * @param typedBy who typed them, when the file says so
 */
public record GelDispute(int typed, int read, Optional<String> typedBy) {

  /** The dispute about some bands, if there is one. */
  public static Optional<GelDispute> of(BandReading bands) {
    if (!(bands.report() instanceof BandReport.Counted counted) || counted.gel().isEmpty()) {
      return Optional.empty();
    }
    BandReport.ReadFromGel gel = counted.gel().get();
    OptionalInt typed = csfOnly(counted.counts());
    OptionalInt read = csfOnly(gel.counts());
    boolean isOne =
        gel.confirmedBy().isEmpty()
            && typed.isPresent()
            && read.isPresent()
            && typed.getAsInt() != read.getAsInt();
    return isOne
        ? Optional.of(new GelDispute(typed.getAsInt(), read.getAsInt(), counted.origin().readBy()))
        : Optional.empty();
  }

  private static OptionalInt csfOnly(BandCounts counts) {
    return counts.csfOnly();
  }

  /** The sentence for a person. */
  public String text() {
    return "Two counts of the same gel: "
        + typed
        + " in the fluid only were typed"
        + typedBy.map(name -> " (" + name + ")").orElse("")
        + ", "
        + read
        + " were read from the picture. The typed count stands in the answer; look at the gel and"
        + " confirm one.";
  }
}
