package cistern.report.page;

import cistern.bands.BandReading;
import cistern.bands.BandReport;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.Text;
import cistern.report.wording.BandsAsRead;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Bands, conflicts, problems, cautions and the foot of a page. */
final class EvidenceBlocks {

  private EvidenceBlocks() {}

  static Node bands(Sheet sheet) {
    BandReading bands = sheet.interpretation().bands();
    if (!bands.isReported()) {
      return Html.section("bands", "Bands", Html.paragraph("No bands were reported."));
    }
    return Html.section(
        "bands",
        "Bands",
        Html.paragraph(bandSentence(bands) + " ").with(sheet.sources().mark(bands.grounds())));
  }

  private static String bandSentence(BandReading bands) {
    String confirmed =
        bands.isConfirmed()
            ? ""
            : " Read automatically: to be confirmed by a person before it counts.";
    return "%s: %s CSF-only, %s shared, %s serum-only bands; cut-off %d CSF-only%s%s.%s"
            .formatted(
                sentenceCase(bands.verdict().word()),
                count(bands.counts().csfOnly()),
                count(bands.counts().shared()),
                count(bands.counts().serumOnly()),
                bands.cutOff(),
                bands.pattern().map(p -> "; pattern " + p.number()).orElse(""),
                origin(bands.report()),
                confirmed)
        + original(bands.report());
  }

  /** What our reader saw in a gel that a person read otherwise. */
  private static String original(BandReport report) {
    return report instanceof BandReport.Counted counted
        ? counted.gel().map(BandsAsRead::sentence).map(s -> " " + s).orElse("")
        : "";
  }

  private static String sentenceCase(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }

  private static String count(OptionalInt bands) {
    return bands.isPresent() ? String.valueOf(bands.getAsInt()) : "uncounted";
  }

  private static String origin(BandReport report) {
    Optional<BandReport.Origin> origin =
        switch (report) {
          case BandReport.NotReported none -> Optional.empty();
          case BandReport.Counted counted -> Optional.of(counted.origin());
          case BandReport.Patterned patterned -> Optional.of(patterned.origin());
          case BandReport.Concluded concluded -> Optional.of(concluded.origin());
          case BandReport.GelNamed named -> Optional.empty();
          case BandReport.ReadFromGel gel -> Optional.empty();
        };
    return origin
        .map(
            o ->
                o.method().map(m -> "; method " + m).orElse("")
                    + o.readBy().map(r -> "; read by " + r).orElse(""))
        .orElse("");
  }

  static Node conflicts(Interpretation interpretation) {
    return interpretation.conflicts().isEmpty()
        ? Fragment.of()
        : Html.section(
            "conflicts",
            "What disagrees",
            Html.list(interpretation.conflicts(), c -> new Text(c.text())));
  }

  static Node problems(Interpretation interpretation) {
    return interpretation.problems().isEmpty()
        ? Fragment.of()
        : Html.section(
            "problems",
            "What is wrong with the input",
            Html.list(
                interpretation.problems(),
                p ->
                    p.place().isEmpty()
                        ? new Text(p.text())
                        : Fragment.of(
                            new Text(p.text() + " "),
                            Element.of("code", p.place()).with("class", "place"))));
  }

  static Node cautions(Interpretation interpretation) {
    String all =
        interpretation.cautions().stream().map(Caution::text).collect(Collectors.joining(" "));
    return Html.section("cautions", "Cautions", Html.paragraph(all));
  }

  /** A line at the top of every page: what the program is for, and invented data. */
  static Node banner(Interpretation interpretation) {
    String invented =
        interpretation.cautions().contains(Caution.INVENTED) ? " " + Caution.INVENTED.text() : "";
    return Html.paragraph(Caution.RESEARCH_ONLY.text() + " Local practice decides." + invented)
        .with("class", "banner");
  }

  /** What wrote the person's page, and for which work-up. */
  static Node shortVersions(Sheet sheet) {
    String policy = sheet.interpretation().policy().map(p -> "; local policy " + p).orElse("");
    return versions(
        "%s%s. Work-up %s."
            .formatted(sheet.software(), policy, sheet.interpretation().workup().id()));
  }

  /** Software, facts and policy with their versions. */
  static Node versions(Sheet sheet) {
    Interpretation interpretation = sheet.interpretation();
    String policy = interpretation.policy().map(p -> "local policy " + p).orElse("no local policy");
    return versions(
        "%s; facts: %s; %s. Work-up %s."
            .formatted(
                sheet.software(),
                interpretation.factsVersion(),
                policy,
                interpretation.workup().id()));
  }

  private static Node versions(String text) {
    return Html.paragraph(text).with("class", "versions");
  }
}
