package cistern.report.plan;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.puncture.procedure.CsfTest;
import cistern.puncture.specimen.Tube;
import cistern.puncture.specimen.TubePlan;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The tubes: in short for the first page, in full for the annex. */
final class TubeSections {

  private final TubePlan plan;

  TubeSections(TubePlan plan) {
    this.plan = plan;
  }

  /** The tubes as a short table. */
  Section first() {
    List<Row> rows =
        plan.tubes().stream()
            .map(t -> Row.of(String.valueOf(t.order()), ml(t.ml()), tests(t), t.container()))
            .toList();
    return Section.of(
        "Tubes, in order of filling",
        new Table("", List.of("Tube", "mL", "tests", "container"), rows),
        new Paragraphs(List.of(new Line(plan.serum(), Grounds.MEASURED))));
  }

  /** Volumes, limits and what to leave out. */
  Section details() {
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line(
            "For "
                + plan.question().term()
                + "; order: "
                + plan.template().term()
                + ", a local choice, as there is no standard.",
            plan.grounds()));
    lines.add(Line.of(volumes()));
    lines.add(Line.of(shortDraw()));
    lines.add(new Line(plan.serum(), Grounds.MEASURED));
    plan.notes().forEach(note -> lines.add(Line.of(note)));
    return new Section(
        "Tubes with their limits",
        List.of(
            new Table(
                "In order of filling, in full",
                List.of("Tube", "mL", "at least", "tests", "container", "limit"),
                plan.tubes().stream().map(TubeSections::row).toList()),
            new Paragraphs(lines)));
  }

  private String volumes() {
    TubePlan.Volumes volumes = plan.volumes();
    String available = volumes.availableMl().map(ml -> " Available: " + ml(ml) + " mL.").orElse("");
    return "Together "
        + ml(volumes.totalMl())
        + " mL (the least for every test "
        + ml(volumes.minimumMl())
        + " mL)."
        + available
        + " That much is made again in about "
        + Printed.decimals(volumes.minutes().middle(), 0)
        + " minutes ("
        + Printed.decimals(volumes.minutes().least(), 0)
        + "–"
        + Printed.decimals(volumes.minutes().most(), 0)
        + ").";
  }

  private String shortDraw() {
    if (plan.dropped().isEmpty()) {
      return "If less comes, leave out first: " + terms(plan.dropFirst()) + ".";
    }
    return "The volume does not reach: " + terms(plan.dropped()) + ".";
  }

  private static Row row(Tube tube) {
    return new Row(
        List.of(
            String.valueOf(tube.order()),
            ml(tube.ml()),
            tube.isReserve() ? "" : ml(tube.minimumMl()),
            tests(tube),
            tube.container(),
            tube.limit()),
        tube.grounds());
  }

  static String tests(Tube tube) {
    return tube.isReserve() ? "reserve" : terms(tube.tests());
  }

  private static String terms(List<CsfTest> tests) {
    return tests.stream().map(CsfTest::term).collect(Collectors.joining(", "));
  }

  static String ml(double value) {
    return Printed.decimals(value, value == Math.rint(value) ? 0 : 1);
  }
}
