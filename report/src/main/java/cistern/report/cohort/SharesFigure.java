package cistern.report.cohort;

import cistern.differential.Proportion;
import cistern.finding.Printed;
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
import java.util.stream.Collectors;

/** Shares with their intervals, one row each, on one scale. */
final class SharesFigure {

  private static final double WIDTH = 640;
  private static final double LEFT = 290;
  private static final double RIGHT = 540;
  private static final double ROW = 24;
  private static final double TOP = 8;
  private static final int STEPS = 4;

  private SharesFigure() {}

  /**
   * One row.
   *
   * @param name what is shared
   * @param share of how many
   */
  record Shared(String name, Proportion share) {}

  static Figure of(String id, String title, List<Shared> rows) {
    double most =
        rows.stream()
            .mapToDouble(r -> r.share().printed(CohortWords.CONFIDENCE).upper())
            .max()
            .orElse(1);
    // Steps of five in a hundred or a multiple: no number on the axis is rounded.
    double end = Math.max(0.2, Math.ceil(most * 5) / 5);
    LinearScale scale = new LinearScale(0, end, LEFT, RIGHT);
    List<Element> shapes = new ArrayList<>();
    double bottom = TOP + rows.size() * ROW;
    shapes.addAll(axis(scale, bottom));
    for (int i = 0; i < rows.size(); i++) {
      shapes.addAll(row(rows.get(i), scale, TOP + (i + 0.5) * ROW));
    }
    return new Figure(
        id,
        title,
        rows.stream()
            .map(r -> r.name() + ": " + CohortWords.counted(r.share()))
            .collect(Collectors.joining(". ")),
        new Spot(WIDTH, bottom + 22),
        shapes,
        new FigureTable(
            List.of("What", "happened", "of", "share (95 % interval)"),
            rows.stream().map(SharesFigure::cells).toList()));
  }

  private static List<String> cells(Shared row) {
    return List.of(
        row.name(),
        Printed.decimals(row.share().positive(), 0),
        Printed.decimals(row.share().of(), 0),
        CohortWords.share(row.share()));
  }

  private static List<Element> axis(LinearScale scale, double bottom) {
    List<Element> shapes = new ArrayList<>();
    for (int step = 0; step <= STEPS; step++) {
      double value = scale.to() * step / STEPS;
      Spot foot = new Spot(scale.at(value), bottom);
      shapes.add(Svg.line(new Spot(foot.x(), TOP), foot, Pen.line(Token.HAIRLINE, 0.7)));
      shapes.add(
          Svg.label(
              foot.to(0, 15),
              CohortWords.percent(value),
              Lettering.of(Token.QUIET).with(Anchor.MIDDLE)));
    }
    return shapes;
  }

  private static List<Element> row(Shared row, LinearScale scale, double y) {
    Proportion.Ends ends = row.share().printed(CohortWords.CONFIDENCE);
    Spot point = new Spot(scale.at(row.share().share()), y);
    return List.of(
        Svg.label(new Spot(0, y + 4), row.name(), Lettering.of(Token.INK)),
        Svg.line(
            new Spot(scale.at(ends.lower()), y),
            new Spot(scale.at(ends.upper()), y),
            Pen.line(Token.FLUID, 3)),
        Svg.circle(point, 4.5, Pen.line(Token.INK, 1).withFill(Token.INK)),
        Svg.label(
            new Spot(RIGHT + 12, y + 4), CohortWords.share(row.share()), Lettering.of(Token.INK)));
  }
}
