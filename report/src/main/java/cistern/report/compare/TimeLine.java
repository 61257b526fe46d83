package cistern.report.compare;

import cistern.analysis.Puncture;
import cistern.finding.FindingCode;
import cistern.finding.Printed;
import cistern.finding.UnitProfile;
import cistern.followup.Comparison;
import cistern.report.figure.Figure;
import cistern.report.figure.FigureTable;
import cistern.report.figure.Lettering;
import cistern.report.figure.LinearScale;
import cistern.report.figure.LogScale;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.figure.VerdictMark;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import cistern.report.wording.ValueWords;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A time line: one row a value, its punctures joined by a line, each with the mark of its verdict;
 * heights within a row are logarithmic between the lowest and the highest.
 */
public final class TimeLine {

  private static final List<FindingCode> FOLLOWED =
      List.of(
          FindingCode.ALBUMIN_QUOTIENT,
          FindingCode.IGG_INDEX,
          FindingCode.KAPPA_INDEX,
          FindingCode.LEUKOCYTES);

  private static final double WIDTH = 640;
  private static final double LEFT = 150;
  private static final double RIGHT = WIDTH - 60;
  private static final double ROW = 64;
  private static final double PADDING = 18;
  private static final double SECONDS_PER_DAY = 86_400;

  private final Comparison comparison;
  private final UnitProfile units;

  private TimeLine(Comparison comparison, UnitProfile units) {
    this.comparison = comparison;
    this.units = units;
  }

  /** The figure; none when a draw time is missing or no value stands at two punctures. */
  public static Optional<Figure> of(Comparison comparison, UnitProfile units) {
    boolean isTimed =
        comparison.days().isPresent()
            && comparison.days().getAsDouble() > 0
            && comparison.punctures().stream().allMatch(e -> e.at().isPresent());
    List<FindingCode> codes =
        FOLLOWED.stream().filter(code -> points(comparison, code).size() > 1).toList();
    return isTimed && !codes.isEmpty()
        ? Optional.of(new TimeLine(comparison, units).figure(codes))
        : Optional.empty();
  }

  private Figure figure(List<FindingCode> codes) {
    double days = comparison.days().orElseThrow();
    List<Element> shapes = new ArrayList<>();
    for (int row = 0; row < codes.size(); row++) {
      shapes.addAll(row(codes.get(row), row * ROW));
    }
    double bottom = codes.size() * ROW;
    for (Puncture puncture : comparison.punctures()) {
      double x = x(comparison, puncture);
      shapes.add(Svg.line(new Spot(x, bottom), new Spot(x, bottom + 5), Pen.line(Token.INK, 1)));
      shapes.add(
          Svg.label(
              new Spot(x, bottom + 18),
              Printed.decimals(day(comparison, puncture), 0),
              Lettering.of(Token.QUIET).with(Lettering.Anchor.MIDDLE)));
    }
    shapes.add(
        Svg.line(new Spot(LEFT, bottom), new Spot(RIGHT, bottom), Pen.line(Token.HAIRLINE, 1)));
    shapes.add(
        Svg.label(new Spot(0, bottom + 18), "days since the first", Lettering.of(Token.QUIET)));
    return new Figure(
        "time-line",
        comparison.punctures().size() + " punctures over " + Printed.decimals(days, 0) + " days",
        description(codes),
        new Spot(WIDTH, bottom + 26),
        shapes,
        table(codes));
  }

  private List<Element> row(FindingCode code, double top) {
    List<Mark> points = points(comparison, code);
    double least = points.stream().mapToDouble(Mark::value).min().orElseThrow();
    double most = points.stream().mapToDouble(Mark::value).max().orElseThrow();
    LogScale scale = new LogScale(least / 1.2, most * 1.2, top + ROW - PADDING, top + PADDING);
    List<Element> shapes = new ArrayList<>();
    shapes.add(
        Svg.label(new Spot(0, top + ROW / 2), code.term() + unit(code), Lettering.of(Token.INK)));
    List<Spot> spots =
        points.stream()
            .map(p -> new Spot(x(comparison, p.puncture()), scale.at(p.value())))
            .toList();
    shapes.add(Svg.polyline(spots, Pen.line(Token.FLUID, 1.2)));
    for (int i = 0; i < points.size(); i++) {
      Mark point = points.get(i);
      shapes.addAll(VerdictMark.PLAIN.of(point.puncture().findings().verdict(code), spots.get(i)));
      shapes.add(
          Svg.label(
              spots.get(i).to(0, -8),
              units.number(code, point.value()),
              Lettering.of(Token.INK).with(Lettering.Anchor.MIDDLE)));
    }
    return shapes;
  }

  private String unit(FindingCode code) {
    return switch (code.print()) {
      case QUOTIENT -> " ×10³";
      case COUNT -> " " + ValueWords.unit(code, units);
      case FRACTION, INDEX, RATE, CONCENTRATION -> "";
    };
  }

  private static double x(Comparison comparison, Puncture puncture) {
    LinearScale scale =
        new LinearScale(0, comparison.days().orElseThrow(), LEFT + PADDING, RIGHT - PADDING);
    return scale.at(day(comparison, puncture));
  }

  private static double day(Comparison comparison, Puncture puncture) {
    Duration since =
        Duration.between(
            comparison.punctures().getFirst().at().orElseThrow(), puncture.at().orElseThrow());
    return since.toSeconds() / SECONDS_PER_DAY;
  }

  private static List<Mark> points(Comparison comparison, FindingCode code) {
    return comparison.punctures().stream().flatMap(e -> point(e, code).stream()).toList();
  }

  private static Optional<Mark> point(Puncture puncture, FindingCode code) {
    double value = puncture.finding(code).number().orElse(0);
    return value > 0 ? Optional.of(new Mark(puncture, value)) : Optional.empty();
  }

  private String description(List<FindingCode> codes) {
    return codes.stream()
        .map(
            code ->
                code.term()
                    + unit(code)
                    + ": "
                    + points(comparison, code).stream()
                        .map(
                            p ->
                                units.number(code, p.value())
                                    + " on day "
                                    + Printed.decimals(day(comparison, p.puncture()), 0))
                        .collect(Collectors.joining(", ")))
        .collect(Collectors.joining(". "));
  }

  private FigureTable table(List<FindingCode> codes) {
    List<List<String>> rows = new ArrayList<>();
    for (FindingCode code : codes) {
      for (Mark point : points(comparison, code)) {
        rows.add(
            List.of(
                code.term() + unit(code),
                Printed.decimals(day(comparison, point.puncture()), 0),
                units.number(code, point.value()),
                point.puncture().findings().verdict(code).word()));
      }
    }
    return new FigureTable(List.of("Value", "day", "result", "verdict"), rows);
  }

  private record Mark(Puncture puncture, double value) {}
}
