package cistern.report.wording;

import cistern.bands.BandReport.ReadFromGel;
import java.util.OptionalInt;

/** What our reader saw in a gel, kept beside what a person made of it. */
public final class BandsAsRead {

  private static final int SIGNS = 12;

  private BandsAsRead() {}

  /** One sentence with the counts as read. */
  public static String sentence(ReadFromGel gel) {
    return "A person's counts stand instead of what was read from %s: %s CSF-only, %s shared, %s serum-only%s."
        .formatted(
            name(gel.file()),
            count(gel.counts().csfOnly()),
            count(gel.counts().shared()),
            count(gel.counts().serumOnly()),
            gel.pattern().map(p -> ", pattern " + p.number()).orElse(", no pattern"));
  }

  /** A name made of a digest says nothing beyond its first signs. */
  private static String name(String file) {
    return file.matches("[0-9a-f]{64}") ? "the picture " + file.substring(0, SIGNS) + "…" : file;
  }

  private static String count(OptionalInt bands) {
    return bands.isPresent() ? String.valueOf(bands.getAsInt()) : "uncounted";
  }
}
