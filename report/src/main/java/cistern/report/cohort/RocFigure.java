package cistern.report.cohort;

import cistern.cohort.RocCurve.Point;
import cistern.cohort.SitePerformance;
import cistern.report.figure.Figure;
import cistern.report.figure.FigureTable;
import cistern.report.figure.Lettering;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.figure.LinearScale;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The curves of sensitivity against false alarms of several findings in the same people. */
final class RocFigure {

  private static final double WIDTH = 640;
  private static final double HEIGHT = 330;
  private static final double LEFT = 60;
  private static final double RIGHT = LEFT + 270;
  private static final double TOP = 12;
  private static final double BOTTOM = TOP + 270;
  private static final LinearScale X = new LinearScale(0, 1, LEFT, RIGHT);
  private static final LinearScale Y = new LinearScale(0, 1, BOTTOM, TOP);
  private static final List<String> DASHES = List.of("", "6 3", "2 3");

  private RocFigure() {}

  static Figure of(List<SitePerformance> all) {
    List<SitePerformance> told = all.stream().filter(p -> p.told().isPresent()).toList();
    List<Element> shapes = new ArrayList<>(axes());
    for (int i = 0; i < told.size(); i++) {
      Pen pen = Pen.line(i == 0 ? Token.FLUID : Token.INK, 1.6).withDash(DASHES.get(i % 3));
      List<Spot> spots =
          told.get(i).told().orElseThrow().curve().points().stream().map(RocFigure::spot).toList();
      shapes.add(Svg.polyline(steps(spots), pen));
      double y = TOP + 30 + 26.0 * i;
      shapes.add(Svg.line(new Spot(RIGHT + 30, y - 4), new Spot(RIGHT + 62, y - 4), pen));
      shapes.add(Svg.label(new Spot(RIGHT + 70, y), words(told.get(i)), Lettering.of(Token.INK)));
    }
    return new Figure(
        "roc",
        "Area under the curve: "
            + told.stream().map(RocFigure::words).collect(Collectors.joining("; ")),
        "Sensitivity against the share of false alarms for every cut-off.",
        new Spot(WIDTH, HEIGHT),
        shapes,
        new FigureTable(
            List.of("Finding", "area", "95 % interval"),
            told.stream()
                .map(
                    p ->
                        List.of(
                            p.code().term(),
                            two(p.told().orElseThrow().area()),
                            two(p.told().orElseThrow().between().lower())
                                + " to "
                                + two(p.told().orElseThrow().between().upper())))
                .toList()));
  }

  private static String words(SitePerformance performance) {
    var told = performance.told().orElseThrow();
    return "%s %s (%s to %s)"
        .formatted(
            performance.code().term(),
            two(told.area()),
            two(told.between().lower()),
            two(told.between().upper()));
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static Spot spot(Point point) {
    return new Spot(X.at(point.falseAlarms()), Y.at(point.sensitivity()));
  }

  /** Upwards first, then to the right, as the curve of a finite sample runs. */
  private static List<Spot> steps(List<Spot> spots) {
    List<Spot> steps = new ArrayList<>();
    for (Spot spot : spots) {
      if (!steps.isEmpty() && steps.getLast().x() != spot.x() && steps.getLast().y() != spot.y()) {
        steps.add(new Spot(steps.getLast().x(), spot.y()));
      }
      steps.add(spot);
    }
    return steps;
  }

  private static List<Element> axes() {
    List<Element> shapes = new ArrayList<>();
    shapes.add(
        Svg.rectangle(new Spot(LEFT, TOP), new Spot(RIGHT, BOTTOM), Pen.line(Token.HAIRLINE, 1)));
    shapes.add(
        Svg.line(
            new Spot(LEFT, BOTTOM),
            new Spot(RIGHT, TOP),
            Pen.line(Token.QUIET, 1).withDash("3 3")));
    Lettering quiet = Lettering.of(Token.QUIET);
    for (double tick : new double[] {0, 0.5, 1}) {
      shapes.add(
          Svg.label(
              new Spot(X.at(tick), BOTTOM + 16),
              CohortWords.percent(tick),
              quiet.with(Anchor.MIDDLE)));
      shapes.add(
          Svg.label(
              new Spot(LEFT - 6, Y.at(tick) + 4),
              CohortWords.percent(tick),
              quiet.with(Anchor.END)));
    }
    shapes.add(
        Svg.label(
            new Spot((LEFT + RIGHT) / 2, BOTTOM + 34),
            "controls above the cut-off",
            quiet.with(Anchor.MIDDLE)));
    shapes.add(
        Svg.upright(
            new Spot(12, (TOP + BOTTOM) / 2),
            "cases above the cut-off",
            quiet.with(Anchor.MIDDLE)));
    return shapes;
  }
}
