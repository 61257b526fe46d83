package cistern.report.text;

import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.finding.Finding;
import cistern.finding.Printed;
import cistern.interpretation.Interpretation;
import cistern.panel.Pairing;
import cistern.report.wording.BandsAsRead;
import cistern.statement.Statement;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;

/** An interpretation as plain text: the answer first, then the numbers, then what they rest on. */
public final class InterpretationText {

  private final String software;

  private InterpretationText(String software) {
    this.software = software;
  }

  /** A writer that names the software and its version. */
  public static InterpretationText of(String software) {
    return new InterpretationText(software);
  }

  /** The text of one interpretation, ending with a line break. */
  public String write(Interpretation interpretation) {
    SourceNotes notes = new SourceNotes();
    String values = values(interpretation, notes);
    String bands = bands(interpretation.bands(), notes);
    String weighed =
        new WeighedText(notes)
            .of(interpretation.weighed(), interpretation.workup().clinical().isEvidenceStated());
    String pair = pair(interpretation.panel().pairing(), notes);
    return head(interpretation)
        + statements(interpretation.statements())
        + values
        + bands
        + weighed
        + pair
        + section("Conflicts", interpretation.conflicts(), c -> c.text())
        + section(
            "Problems with the input",
            interpretation.problems(),
            p -> p.text() + (p.place().isEmpty() ? "" : " (" + p.place() + ")"))
        + section("Cautions", interpretation.cautions(), c -> c.text())
        + sources(notes)
        + foot(interpretation);
  }

  private static String head(Interpretation interpretation) {
    return Wrapped.of("", "Work-up " + interpretation.workup().id())
        + "For research and education. Not a medical device.\n\n";
  }

  private static String statements(List<Statement> statements) {
    StringBuilder text = new StringBuilder();
    statements.forEach(s -> text.append(Wrapped.of("", s.text())));
    return text.append('\n').toString();
  }

  private static String values(Interpretation interpretation, SourceNotes notes) {
    List<Finding> shown =
        interpretation.findings().all().stream().filter(Finding::isAsked).toList();
    StringBuilder text = new StringBuilder("Values\n");
    if (shown.isEmpty()) {
      text.append("  No results were given.\n");
    }
    shown.forEach(f -> text.append(ValueLine.of(f, notes.mark(f.grounds()))));
    return text.append('\n').toString();
  }

  private static String bands(BandReading bands, SourceNotes notes) {
    if (!bands.isReported()) {
      return "Bands\n  Not reported.\n\n";
    }
    String pattern = bands.pattern().map(p -> ", pattern " + p.number()).orElse("");
    String confirmed = bands.isConfirmed() ? "" : ", read automatically and not yet confirmed";
    String counts =
        "CSF-only %s, shared %s, serum-only %s"
            .formatted(
                count(bands.counts().csfOnly()),
                count(bands.counts().shared()),
                count(bands.counts().serumOnly()));
    return "Bands\n"
        + Wrapped.of(
            "  ",
            "%s; cut-off %d CSF-only bands: %s%s%s %s"
                .formatted(
                    counts,
                    bands.cutOff(),
                    bands.verdict().word(),
                    pattern,
                    confirmed,
                    notes.mark(bands.grounds())))
        + asRead(bands.report())
        + "\n";
  }

  private static String asRead(BandReport report) {
    return report instanceof BandReport.Counted counted
        ? counted.gel().map(g -> Wrapped.of("  ", BandsAsRead.sentence(g))).orElse("")
        : "";
  }

  private static String count(OptionalInt bands) {
    return bands.isPresent() ? String.valueOf(bands.getAsInt()) : "not counted";
  }

  private static String pair(Pairing pairing, SourceNotes notes) {
    String apart =
        pairing.hoursApart().isPresent()
            ? Printed.decimals(pairing.hoursApart().getAsDouble(), 1) + " h from CSF to serum"
            : "the draw times are not both known";
    return "Pair of CSF and serum\n"
        + Wrapped.of(
            "  ", pairing.verdict().word() + ": " + apart + " " + notes.mark(pairing.grounds()))
        + "\n";
  }

  private static <T> String section(String title, List<T> items, Function<T, String> sentence) {
    if (items.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder(title).append('\n');
    items.forEach(item -> text.append(Wrapped.of("  – ", sentence.apply(item))));
    return text.append('\n').toString();
  }

  private static String sources(SourceNotes notes) {
    return "Sources\n" + notes.toText() + "\n";
  }

  private String foot(Interpretation interpretation) {
    String policy = interpretation.policy().map(p -> "local policy " + p).orElse("no local policy");
    return Wrapped.of(
        "", "%s; facts: %s; %s".formatted(software, interpretation.factsVersion(), policy));
  }
}
