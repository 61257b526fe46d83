package cistern.gel.reading;

import cistern.bands.BandPattern;
import java.util.List;
import java.util.Locale;

/** Writes readings as plain text for a person. */
public final class ReadingText {
  private final StringBuilder text = new StringBuilder();

  private ReadingText() {}

  /** The text for some readings. */
  public static String toText(List<GelReading> readings) {
    ReadingText writer = new ReadingText();
    readings.forEach(writer::reading);
    return writer.text.toString();
  }

  private void reading(GelReading r) {
    line(r.picture().file() + ": " + r.lanes().size() + " lanes, " + r.pairs().size() + " pairs.");
    r.pairs().forEach(this::pair);
    for (LaneReading lane : r.lanes()) {
      lane.problems().forEach(p -> line("Lane " + lane.index() + ": " + p.text() + "."));
    }
    r.problems().forEach(p -> line("The gel: " + p.text() + "."));
    line("A reading is a proposal until a person who sees the gel has confirmed it.");
    text.append('\n');
  }

  private void pair(PairReading p) {
    String pattern = p.pattern().map(ReadingText::words).orElse("no pattern is given");
    line("Pair " + p.pair() + ": " + p.verdict().word() + "; " + pattern + ".");
    p.counts().ifPresent(this::counts);
    p.problems().forEach(q -> line("  " + q.text() + "."));
    if (p.needsReview()) {
      line("  Look at the gel before you use this: " + String.join("; ", p.review()) + ".");
    }
  }

  private void counts(PairReading.Counts c) {
    line(
        String.format(
            Locale.ROOT,
            "  %d bands only in the CSF, %d shared, %d only in the serum;"
                + " at or over the cut-off: %s chances in 100.",
            c.csfOnly(),
            c.shared(),
            c.serumOnly(),
            hundredths(c.probabilityPositive())));
  }

  /** Nothing that is measured is certain: neither 0 nor 100. */
  private static String hundredths(double chance) {
    if (chance < 0.01) {
      return "fewer than 1";
    }
    return chance > 0.99 ? "more than 99" : String.format(Locale.ROOT, "%.0f", 100 * chance);
  }

  private static String words(BandPattern pattern) {
    return "pattern "
        + pattern.number()
        + switch (pattern) {
          case NORMAL -> ", CSF-only bands not demonstrated";
          case LOCAL -> ", bands only in the CSF";
          case LOCAL_AND_SYSTEMIC -> ", shared bands and more in the CSF";
          case SYSTEMIC -> ", the same bands in both";
          case LADDER -> ", a regular ladder in both";
        };
  }

  private void line(String sentence) {
    text.append(sentence).append('\n');
  }
}
