package cistern.report.compare;

import cistern.analysis.Puncture;
import cistern.bands.BandReading;
import cistern.fact.Facts;
import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.followup.BandChange;
import cistern.followup.Change;
import cistern.followup.ChangeLimits;
import cistern.followup.Comparison;
import cistern.followup.Comparison.Step;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Block;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Picture;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Repeat punctures for the clinician: what it means first, then every value. */
public final class ComparisonPaper {

  private ComparisonPaper() {}

  /**
   * The paper of a comparison.
   *
   * @param facts how times are printed, and in which units where the laboratories differ
   * @param remarks what must be said beside it: that the data are invented
   * @param foot what made it
   */
  public static Paper of(Comparison comparison, Facts facts, List<String> remarks, String foot) {
    UnitProfile units = comparison.units(UnitProfile.of(facts));
    List<Section> sections = new ArrayList<>();
    sections.add(punctures(comparison, PrintedTime.of(facts), units));
    for (int i = 0; i < comparison.steps().size(); i++) {
      sections.addAll(step(comparison.steps().get(i), units));
    }
    String whose = comparison.person().map(p -> " of person " + p).orElse("");
    return new Paper(
        "Repeat punctures" + whose,
        Stream.concat(
                comparison.remarks().stream().map(r -> new Line(r.text(), r.grounds())),
                remarks.stream().map(Line::of))
            .toList(),
        sections,
        foot);
  }

  private static Section punctures(Comparison comparison, PrintedTime chosen, UnitProfile units) {
    PrintedTime times = chosen.like(comparison.punctures().getFirst().at());
    List<Row> rows = comparison.punctures().stream().map(p -> row(p, times)).toList();
    String caption =
        comparison.days().isPresent()
            ? "Over " + Printed.decimals(comparison.days().getAsDouble(), 0) + " days"
            : "In the order given; the days between are not known";
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Table(caption, List.of("Work-up", "drawn", "pair of CSF and serum", "bands"), rows));
    TimeLine.of(comparison, units).map(Picture::new).ifPresent(blocks::add);
    return new Section("Punctures", blocks);
  }

  private static Row row(Puncture puncture, PrintedTime times) {
    return Row.of(
        puncture.workup(),
        puncture.at().map(times::at).orElse("not recorded"),
        puncture.panel().pairing().verdict().word(),
        bands(puncture.bands()));
  }

  private static String bands(BandReading reading) {
    return count(reading.counts().csfOnly())
        + " CSF-only, "
        + reading.verdict().word()
        + BandChange.method(reading.report()).map(m -> ", " + m).orElse("");
  }

  private static String count(OptionalInt count) {
    return count.isPresent() ? String.valueOf(count.getAsInt()) : "not counted";
  }

  private static List<Section> step(Step step, UnitProfile units) {
    List<Row> rows =
        step.changes().stream()
            .map(change -> new Row(cells(change, units), change.grounds()))
            .toList();
    BandChange bands = step.bands();
    String title = step.earlier().workup() + " to " + step.later().workup();
    List<Row> bandRows =
        List.of(
            Row.of(
                "Oligoclonal bands",
                bands(bands.from()),
                bands(bands.to()),
                count(bands.gained()),
                count(bands.lost()),
                bands.verdict().word().replace('-', ' '),
                bands.chances().map(ComparisonPaper::chances).orElse("")));
    return List.of(
        Section.of(
            "Bands, " + title,
            new Table(
                "Net of all bands; which one came or went cannot be told from counts",
                List.of("What", "from", "to", "gained", "lost", "verdict", "uncertainty"),
                bandRows)),
        Section.of(
            "Values, " + title,
            new Table(
                "Against the analytical limit of change; biological variation only from local"
                    + " policy",
                List.of("Value", "from", "to", "limit of change", "verdict", "note"),
                rows)));
  }

  private static String chances(BandChange.Chances chances) {
    return "from reading the gel: more in "
        + percent(chances.more())
        + ", fewer in "
        + percent(chances.fewer())
        + " of 100";
  }

  private static List<String> cells(Change change, UnitProfile units) {
    ChangeWords words = ChangeWords.of(change, units);
    return List.of(
        words.name(),
        words.from(),
        words.to(),
        change.limits().map(ComparisonPaper::limits).orElse("none"),
        change.verdict().word().replace('-', ' '),
        change.note());
  }

  private static String limits(ChangeLimits limits) {
    return Printed.decimals(limits.down() * 100, 0)
        + " to +"
        + Printed.decimals(limits.up() * 100, 0)
        + " %";
  }

  private static String percent(double share) {
    return Printed.decimals(share * 100, 0);
  }
}
