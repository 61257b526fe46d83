package cistern.report.cohort;

import cistern.cohort.QualityFigure;
import cistern.cohort.Tally;
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
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A share month by month between control limits of three standard errors around the share of all
 * months (Shewhart's p chart); months with too few people are left out.
 */
final class RunChart {

  private static final double WIDTH = 640;
  private static final double HEIGHT = 170;
  private static final double LEFT = 46;
  private static final double RIGHT = WIDTH - 86;
  private static final double TOP = 12;
  private static final double BOTTOM = HEIGHT - 26;
  private static final double ERRORS = 3;
  private static final int FEWEST_MONTHS = 6;

  private final QualityFigure figure;
  private final SortedMap<YearMonth, Proportion> months;
  private final double centre;

  private RunChart(QualityFigure figure, SortedMap<YearMonth, Proportion> months, double centre) {
    this.figure = figure;
    this.months = months;
    this.centre = centre;
  }

  /** The chart of a figure; none from fewer than six months. */
  static Optional<Figure> of(
      QualityFigure figure,
      SortedMap<YearMonth, SortedMap<QualityFigure, Tally>> byMonth,
      int smallest) {
    SortedMap<YearMonth, Proportion> months = new TreeMap<>();
    byMonth.forEach(
        (month, tallies) ->
            tallies
                .getOrDefault(figure, Tally.NONE)
                .share()
                .filter(share -> share.of() >= smallest)
                .ifPresent(share -> months.put(month, share)));
    double happened = months.values().stream().mapToDouble(Proportion::positive).sum();
    double all = months.values().stream().mapToDouble(Proportion::of).sum();
    return months.size() < FEWEST_MONTHS || happened == 0
        ? Optional.empty()
        : Optional.of(new RunChart(figure, months, happened / all).figure());
  }

  private double half(Proportion month) {
    return ERRORS * Math.sqrt(centre * (1 - centre) / month.of());
  }

  private boolean isOutside(Proportion month) {
    return Math.abs(month.share() - centre) > half(month);
  }

  private Figure figure() {
    List<YearMonth> outside =
        months.entrySet().stream()
            .filter(m -> isOutside(m.getValue()))
            .map(Map.Entry::getKey)
            .toList();
    String title =
        CohortWords.sentence(figure.text())
            + ": "
            + CohortWords.percent(centre)
            + " over "
            + months.size()
            + " months, "
            + (outside.isEmpty()
                ? "no month beyond the control limits"
                : outside.size()
                    + (outside.size() == 1 ? " month" : " months")
                    + " beyond the control limits");
    return new Figure(
        "run-" + figure.code(),
        title,
        "Control limits are three standard errors around the share of all months.",
        new Spot(WIDTH, HEIGHT),
        shapes(),
        new FigureTable(
            List.of("Month", "happened", "of", "share", "control limits"),
            months.entrySet().stream().map(m -> row(m.getKey(), m.getValue())).toList()));
  }

  private List<String> row(YearMonth month, Proportion share) {
    return List.of(
        month.toString(),
        Printed.decimals(share.positive(), 0),
        Printed.decimals(share.of(), 0),
        CohortWords.percent(share.share()),
        CohortWords.percent(Math.max(0, centre - half(share)))
            + " to "
            + CohortWords.percent(Math.min(1, centre + half(share))));
  }

  private List<Element> shapes() {
    double most =
        months.values().stream()
            .mapToDouble(m -> Math.max(m.share(), Math.min(1, centre + half(m))))
            .max()
            .orElse(1);
    LinearScale y = new LinearScale(0, Math.max(0.1, Math.ceil(most * 10) / 10), BOTTOM, TOP);
    YearMonth first = months.firstKey();
    double span = Math.max(1, months(first, months.lastKey()));
    LinearScale x = new LinearScale(0, span, LEFT + 8, RIGHT - 8);
    List<Element> shapes = new ArrayList<>(axes(y, x, first, (int) span));
    shapes.addAll(limits(x, y, first));
    List<Spot> spots = new ArrayList<>();
    months.forEach(
        (month, share) -> spots.add(new Spot(x.at(months(first, month)), y.at(share.share()))));
    shapes.add(Svg.polyline(spots, Pen.line(Token.FLUID, 1.4)));
    List<Proportion> shares = List.copyOf(months.values());
    for (int i = 0; i < spots.size(); i++) {
      boolean isOutside = isOutside(shares.get(i));
      shapes.add(
          Svg.circle(
              spots.get(i),
              isOutside ? 5 : 3.4,
              Pen.line(Token.FLUID, 1.4).withFill(isOutside ? Token.INK : Token.PAPER)));
    }
    return shapes;
  }

  private static double months(YearMonth first, YearMonth month) {
    return (double) ChronoUnit.MONTHS.between(first, month);
  }

  /** The share of all months and the limits around it, each with its words. */
  private List<Element> limits(LinearScale x, LinearScale y, YearMonth first) {
    List<Spot> upper = new ArrayList<>();
    List<Spot> lower = new ArrayList<>();
    months.forEach(
        (month, share) -> {
          double at = x.at(months(first, month));
          upper.add(new Spot(at, y.at(Math.min(1, centre + half(share)))));
          lower.add(new Spot(at, y.at(Math.max(0, centre - half(share)))));
        });
    Pen limit = Pen.line(Token.QUIET, 1).withDash("4 3");
    Spot left = new Spot(LEFT, y.at(centre));
    Spot right = new Spot(RIGHT, y.at(centre));
    return List.of(
        Svg.polyline(upper, limit),
        Svg.polyline(lower, limit),
        Svg.line(left, right, Pen.line(Token.QUIET, 1)),
        Svg.label(right.to(6, 4), "all " + CohortWords.percent(centre), Lettering.of(Token.QUIET)),
        Svg.label(upper.getLast().to(14, 4), "control limit", Lettering.of(Token.QUIET)));
  }

  private static List<Element> axes(LinearScale y, LinearScale x, YearMonth first, int span) {
    List<Element> shapes = new ArrayList<>();
    for (double value : new double[] {0, y.to() / 2, y.to()}) {
      shapes.add(
          Svg.line(
              new Spot(LEFT, y.at(value)),
              new Spot(RIGHT, y.at(value)),
              Pen.line(Token.HAIRLINE, 0.7)));
      shapes.add(
          Svg.label(
              new Spot(LEFT - 6, y.at(value) + 4),
              CohortWords.percent(value),
              Lettering.of(Token.QUIET).with(Anchor.END)));
    }
    int step = Math.max(1, (int) Math.ceil(span / 6.0));
    for (int month = 0; month <= span; month += step) {
      shapes.add(
          Svg.label(
              new Spot(x.at(month), BOTTOM + 17),
              first.plusMonths(month).toString(),
              Lettering.of(Token.QUIET).with(Anchor.MIDDLE)));
    }
    return shapes;
  }
}
