package cistern.report.figure;

import static cistern.report.look.Token.FLUID;
import static cistern.report.look.Token.HAIRLINE;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.differential.Weight;
import cistern.differential.Witness;
import cistern.finding.Printed;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import cistern.report.wording.OddsWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How much each finding moves the odds of MS: bars from a centre line, to the right for more
 * likely, with the 95 % interval as a whisker, grouped by witness. The ruler is logarithmic, so
 * that twice and half are equally far from the centre.
 */
public final class WeightBars {

  private static final double WIDTH = 560;
  private static final double ROW = 22;
  private static final double GROUP = 22;
  private static final double TOP = 26;
  private static final double LEFT = 230;
  private static final double RIGHT = 455;
  private static final double HALF_BAR = 5;
  private static final double SMALLEST_SPAN = 5;
  private static final List<Integer> TICKS = List.of(1, 2, 5, 10, 20, 50, 100, 1000);

  private final List<Weight> weights;
  private final LinearScale scale;
  private final double widest;

  private WeightBars(List<Weight> weights) {
    this.weights = weights;
    widest =
        weights.stream().mapToDouble(WeightBars::reach).reduce(Math.log(SMALLEST_SPAN), Math::max);
    scale = new LinearScale(-widest, widest, LEFT, RIGHT);
  }

  /** The bars of the findings that moved anything; nothing where none did. */
  public static Optional<Figure> toFigure(String id, List<Weight> ofMs) {
    List<Weight> moving = ofMs.stream().filter(w -> w.logOdds() != 0).toList();
    return moving.isEmpty() ? Optional.empty() : Optional.of(new WeightBars(moving).figure(id));
  }

  private static double reach(Weight weight) {
    return weight
        .interval95()
        .map(e -> Math.max(Math.abs(e.lower()), Math.abs(e.upper())))
        .orElse(Math.abs(weight.logOdds()));
  }

  private Figure figure(String id) {
    List<Element> shapes = new ArrayList<>();
    double y = TOP;
    Optional<Witness> before = Optional.empty();
    List<Element> rows = new ArrayList<>();
    for (Weight weight : weights) {
      Witness witness = weight.observation().trait().witness();
      if (!before.equals(Optional.of(witness))) {
        y += GROUP;
        rows.add(Svg.label(new Spot(0, y), witness.term(), Lettering.of(QUIET)));
        before = Optional.of(witness);
      }
      y += ROW;
      rows.addAll(row(weight, y));
    }
    double bottom = y + ROW / 2;
    shapes.addAll(axis(bottom));
    shapes.addAll(rows);
    return new Figure(id, title(), description(), new Spot(WIDTH, bottom + 2), shapes, table());
  }

  private List<Element> axis(double bottom) {
    List<Element> lines = new ArrayList<>();
    for (int tick : TICKS) {
      for (int side : List.of(1, -1)) {
        double at = side * Math.log(tick);
        boolean isDrawn = Math.abs(at) <= widest && !(tick == 1 && side < 0);
        if (isDrawn) {
          double x = scale.at(at);
          lines.add(
              Svg.line(
                  new Spot(x, TOP - 4),
                  new Spot(x, bottom),
                  tick == 1 ? Pen.line(INK, 1.2) : Pen.line(HAIRLINE, 0.8)));
          lines.add(
              Svg.label(
                  new Spot(x, TOP - 8),
                  side > 0 ? "×" + tick : "÷" + tick,
                  Lettering.of(QUIET).with(Anchor.MIDDLE)));
        }
      }
    }
    return lines;
  }

  private List<Element> row(Weight weight, double y) {
    double middle = y - 4;
    List<Element> row = new ArrayList<>();
    row.add(Svg.label(new Spot(8, y), label(weight), Lettering.of(INK)));
    row.add(
        Svg.rectangle(
            new Spot(scale.at(0), middle - HALF_BAR),
            new Spot(scale.at(weight.logOdds()), middle + HALF_BAR),
            Pen.area(FLUID)));
    weight
        .interval95()
        .ifPresent(
            e ->
                row.add(
                    Svg.line(
                        new Spot(scale.at(e.lower()), middle),
                        new Spot(scale.at(e.upper()), middle),
                        Pen.line(INK, 1.2))));
    row.add(Svg.label(new Spot(RIGHT + 10, y), times(weight), Lettering.of(INK)));
    return row;
  }

  private static String label(Weight weight) {
    String term = weight.observation().trait().term();
    return weight.observation().isFound() ? term : "without " + term;
  }

  private static String times(Weight weight) {
    if (!OddsWords.isMoving(weight)) {
      return "no change";
    }
    String factor = Printed.significant(OddsWords.factor(Math.abs(weight.logOdds())));
    return weight.logOdds() > 0 ? factor + " × more" : factor + " × less";
  }

  private String title() {
    Weight strongest =
        weights.stream().max(Comparator.comparingDouble(w -> Math.abs(w.logOdds()))).orElseThrow();
    return "%s: %s; no other finding moves it more"
        .formatted(strongest.observation().toText(), OddsWords.of(strongest));
  }

  private String description() {
    return weights.stream()
        .map(w -> w.observation().toText() + " " + OddsWords.of(w))
        .collect(Collectors.joining("; "));
  }

  private FigureTable table() {
    return new FigureTable(
        List.of("finding", "witness", "how much it moves MS"),
        weights.stream()
            .map(
                w ->
                    List.of(
                        w.observation().toText(),
                        w.observation().trait().witness().term(),
                        OddsWords.of(w)))
            .toList());
  }
}
