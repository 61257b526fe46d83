package cistern.report.cohort;

import cistern.cohort.AgeLine;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.report.cohort.CohortReport.Aged;
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
import java.util.stream.DoubleStream;

/** The albumin quotient of controls by age, under the limit in force and the site's own line. */
final class AgeFigure {

  private static final FindingCode CODE = FindingCode.ALBUMIN_QUOTIENT;
  private static final double WIDTH = 640;
  private static final double HEIGHT = 280;
  private static final double LEFT = 46;
  private static final double RIGHT = WIDTH - 110;
  private static final double TOP = 12;
  private static final double BOTTOM = HEIGHT - 40;
  private static final double DECADE = 10;
  private static final double STEP = 5e-3;

  private final List<Aged> points;
  private final LinearScale x;
  private final LinearScale y;

  private AgeFigure(List<Aged> points) {
    this.points = points;
    double youngest = points.stream().mapToDouble(Aged::years).min().orElse(0);
    double oldest = points.stream().mapToDouble(Aged::years).max().orElse(DECADE);
    double most = points.stream().mapToDouble(Aged::value).max().orElse(STEP);
    x =
        new LinearScale(
            Math.floor(youngest / DECADE) * DECADE,
            Math.floor(oldest / DECADE + 1) * DECADE,
            LEFT,
            RIGHT);
    y = new LinearScale(0, Math.ceil(most / STEP) * STEP, BOTTOM, TOP);
  }

  static Figure of(List<Aged> points, AgeLine line) {
    return new AgeFigure(points).figure(line);
  }

  private Figure figure(AgeLine line) {
    List<Element> shapes = new ArrayList<>(axes());
    for (Aged point : points) {
      shapes.add(
          Svg.circle(
              new Spot(x.at(point.years()), y.at(point.value())), 2.2, Pen.area(Token.FLUID)));
    }
    Spot end = new Spot(RIGHT, y.at(line.at(x.to())));
    shapes.add(Svg.line(new Spot(LEFT, y.at(line.at(x.from()))), end, Pen.line(Token.INK, 1.6)));
    shapes.add(Svg.label(end.to(6, 4), "97.5 % of the", Lettering.of(Token.INK)));
    shapes.add(Svg.label(end.to(6, 19), "controls below", Lettering.of(Token.INK)));
    List<Double> ages =
        DoubleStream.iterate(x.from(), a -> a <= x.to(), a -> a + DECADE).boxed().toList();
    return new Figure(
        "albumin-by-age",
        "97.5 % of the controls lie under "
            + Printed.of(CODE, line.at(20))
            + " at 20 and under "
            + Printed.of(CODE, line.at(60))
            + " at 60 years (albumin quotient × 10³)",
        points.size() + " controls are drawn, with the line of the 97.5th percentile by age.",
        new Spot(WIDTH, HEIGHT),
        shapes,
        new FigureTable(
            List.of("Age, years", "97.5th percentile × 10³"),
            ages.stream()
                .map(a -> List.of(Printed.decimals(a, 0), Printed.of(CODE, line.at(a))))
                .toList()));
  }

  private List<Element> axes() {
    List<Element> shapes = new ArrayList<>();
    for (double value = 0; value <= y.to() + STEP / 2; value += STEP) {
      shapes.add(
          Svg.line(
              new Spot(LEFT, y.at(value)),
              new Spot(RIGHT, y.at(value)),
              Pen.line(Token.HAIRLINE, 0.7)));
      shapes.add(
          Svg.label(
              new Spot(LEFT - 6, y.at(value) + 4),
              Printed.decimals(value * 1e3, 0),
              Lettering.of(Token.QUIET).with(Anchor.END)));
    }
    for (double age = x.from(); age <= x.to(); age += DECADE) {
      shapes.add(
          Svg.label(
              new Spot(x.at(age), BOTTOM + 16),
              Printed.decimals(age, 0),
              Lettering.of(Token.QUIET).with(Anchor.MIDDLE)));
    }
    shapes.add(
        Svg.label(
            new Spot((LEFT + RIGHT) / 2, BOTTOM + 34),
            "age, years",
            Lettering.of(Token.QUIET).with(Anchor.MIDDLE)));
    shapes.add(
        Svg.upright(
            new Spot(11, (TOP + BOTTOM) / 2),
            "albumin quotient × 10³",
            Lettering.of(Token.QUIET).with(Anchor.MIDDLE)));
    return shapes;
  }
}
