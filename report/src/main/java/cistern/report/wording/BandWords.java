package cistern.report.wording;

import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.bands.BandReport.ReadFromGel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Oligoclonal bands in the words of a report, the same on every paper. */
public final class BandWords {

  private static final int SIGNS = 12;

  private BandWords() {}

  /** {@code 8 CSF-only, 0 shared, 0 serum-only}. */
  public static String counts(BandReading bands) {
    return counts(bands.counts().csfOnly(), bands.counts().shared(), bands.counts().serumOnly());
  }

  private static String counts(OptionalInt csfOnly, OptionalInt shared, OptionalInt serumOnly) {
    return "%s CSF-only, %s shared, %s serum-only"
        .formatted(count(csfOnly), count(shared), count(serumOnly));
  }

  private static String count(OptionalInt bands) {
    return bands.isPresent() ? String.valueOf(bands.getAsInt()) : "uncounted";
  }

  /** Counts, pattern, method, reader, and what a person has still to confirm. */
  public static List<String> remarks(BandReading bands) {
    List<String> remarks = new ArrayList<>();
    String pattern = bands.pattern().map(p -> "pattern " + p.number()).orElse("");
    boolean isCounted = bands.counts().csfOnly().isPresent() || bands.counts().shared().isPresent();
    String counts = isCounted ? counts(bands) : "";
    String both = counts + (counts.isEmpty() || pattern.isEmpty() ? "" : ": ") + pattern;
    if (!both.isEmpty()) {
      remarks.add(both);
    }
    origin(bands.report()).ifPresent(o -> remarks.addAll(toWords(o)));
    if (!bands.isConfirmed()) {
      remarks.add("read automatically, to be confirmed by a person before it counts");
    }
    asRead(bands.report()).ifPresent(remarks::add);
    return remarks;
  }

  private static List<String> toWords(BandReport.Origin origin) {
    List<String> words = new ArrayList<>();
    origin.method().ifPresent(m -> words.add("method " + m));
    origin.readBy().ifPresent(r -> words.add("read by " + r));
    return words;
  }

  private static Optional<BandReport.Origin> origin(BandReport report) {
    return switch (report) {
      case BandReport.NotReported none -> Optional.empty();
      case BandReport.Counted counted -> Optional.of(counted.origin());
      case BandReport.Patterned patterned -> Optional.of(patterned.origin());
      case BandReport.Concluded concluded -> Optional.of(concluded.origin());
      case BandReport.GelNamed named -> Optional.empty();
      case BandReport.ReadFromGel gel -> Optional.empty();
    };
  }

  /** What our reader saw in a gel, kept beside what a person made of it. */
  private static Optional<String> asRead(BandReport report) {
    return report instanceof BandReport.Counted counted
        ? counted.gel().map(BandWords::asRead)
        : Optional.empty();
  }

  private static String asRead(ReadFromGel gel) {
    return "these counts stand instead of what was read from %s: %s"
        .formatted(
            name(gel.file()),
            counts(gel.counts().csfOnly(), gel.counts().shared(), gel.counts().serumOnly()));
  }

  /** A name made of a digest says nothing beyond its first signs. */
  private static String name(String file) {
    return file.matches("[0-9a-f]{64}") ? "the picture " + file.substring(0, SIGNS) + "…" : file;
  }
}
