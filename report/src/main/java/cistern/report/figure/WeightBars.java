package cistern.report.figure;

import static cistern.report.look.Token.FLUID;
import static cistern.report.look.Token.HAIRLINE;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.QUIET;

import cistern.differential.Proportion;
import cistern.differential.Weight;
import cistern.finding.Printed;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.markup.Element;
import cistern.report.wording.OddsWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How much each finding moves the odds of MS: bars from a centre line, to the right for more
 * likely, with the predictive interval as a whisker. The ruler is logarithmic, so that twice and
 * half are equally far from the centre.
 */
public final class WeightBars {

  /** As wide as a quotient diagram, so that both stand in one row with letters of one size. */
  private static final double WIDTH = Plane.WIDTH;

  private static final double LINE = 15;
  private static final double BAR = 16;
  private static final double TOP = 18;
  private static final double HALF_BAR = 3.5;
  private static final double TICK = 4;
  private static final double SIDE = 18;
  private static final double SMALLEST_SPAN = 5;
  private static final List<Integer> TICKS = List.of(1, 2, 5, 10, 20, 50, 100, 200, 500, 1000);
  private static final int MOST_TICKS = 4;

  private static final String SUPPORTED = "what a cohort supports";
  private static final String APART = "not counted: no cohort shows that it adds";

  private final List<Weight> weights;
  private final List<Weight> apart;
  private final LinearScale scale;
  private final double widest;

  private WeightBars(List<Weight> weights, List<Weight> apart) {
    this.weights = weights;
    this.apart = apart;
    widest =
        weights.stream().mapToDouble(WeightBars::reach).reduce(Math.log(SMALLEST_SPAN), Math::max);
    scale = new LinearScale(-widest, widest, SIDE, WIDTH - SIDE);
  }

  /** The bars of the findings that moved anything, and what was not counted; else nothing. */
  public static Optional<Figure> toFigure(String id, List<Weight> ofMs) {
    List<Weight> moving = ofMs.stream().filter(Weight::isCounted).toList();
    List<Weight> apart =
        ofMs.stream().filter(w -> !w.isCounted() && w.observation().isFound()).toList();
    return moving.isEmpty()
        ? Optional.empty()
        : Optional.of(new WeightBars(moving, apart).figure(id));
  }

  private static double reach(Weight weight) {
    return weight
        .interval95()
        .map(e -> Math.max(Math.abs(e.lower()), Math.abs(e.upper())))
        .orElse(Math.abs(log(weight)));
  }

  private Figure figure(String id) {
    List<Element> rows = new ArrayList<>();
    double y = TOP + LINE;
    rows.addAll(Svg.labelOnPaper(new Spot(0, y), SUPPORTED, Lettering.of(QUIET)));
    for (Weight weight : weights) {
      y += LINE;
      rows.addAll(words(weight, y));
      y += BAR;
      rows.addAll(bar(weight, y - BAR / 2 + 1));
    }
    List<Element> shapes = new ArrayList<>(axis(y));
    shapes.addAll(rows);
    if (!apart.isEmpty()) {
      y += LINE + TICK;
      shapes.add(Svg.label(new Spot(0, y), APART, Lettering.of(QUIET)));
    }
    for (Weight weight : apart) {
      y += LINE;
      shapes.add(Svg.label(new Spot(8, y), label(weight), Lettering.of(INK)));
    }
    return new Figure(id, title(), description(), new Spot(WIDTH, y + TICK), shapes, table());
  }

  private List<Element> axis(double bottom) {
    List<Element> lines = new ArrayList<>(tick(0, "×1", bottom));
    ticks()
        .forEach(
            tick -> {
              lines.addAll(tick(Math.log(tick), "×" + tick, bottom));
              lines.addAll(tick(-Math.log(tick), "÷" + tick, bottom));
            });
    return lines;
  }

  /** Factors on either side that lie on the ruler, not so many that they touch. */
  private List<Integer> ticks() {
    List<Integer> all = TICKS.stream().filter(t -> t > 1 && Math.log(t) <= widest).toList();
    int step = (all.size() + MOST_TICKS - 1) / MOST_TICKS;
    return IntStream.range(0, all.size())
        .filter(i -> (all.size() - 1 - i) % step == 0)
        .mapToObj(all::get)
        .toList();
  }

  private List<Element> tick(double log, String word, double bottom) {
    double x = scale.at(log);
    return List.of(
        Svg.line(
            new Spot(x, TOP),
            new Spot(x, bottom),
            log == 0 ? Pen.line(INK, 1.2) : Pen.line(HAIRLINE, 0.8)),
        Svg.label(new Spot(x, TOP - TICK), word, Lettering.of(QUIET).with(Anchor.MIDDLE)));
  }

  private static List<Element> words(Weight weight, double y) {
    List<Element> words =
        new ArrayList<>(Svg.labelOnPaper(new Spot(8, y), label(weight), Lettering.of(INK)));
    words.addAll(
        Svg.labelOnPaper(new Spot(WIDTH, y), times(weight), Lettering.of(INK).with(Anchor.END)));
    return words;
  }

  private List<Element> bar(Weight weight, double middle) {
    List<Element> row = new ArrayList<>();
    row.add(
        Svg.rectangle(
            new Spot(scale.at(0), middle - HALF_BAR),
            new Spot(scale.at(log(weight)), middle + HALF_BAR),
            Pen.area(FLUID)));
    weight.interval95().ifPresent(e -> row.addAll(whisker(e, middle)));
    return row;
  }

  private List<Element> whisker(Proportion.Ends ends, double middle) {
    double from = scale.at(ends.lower());
    double to = scale.at(ends.upper());
    Pen pen = Pen.line(INK, 1.2);
    return List.of(
        Svg.line(new Spot(from, middle), new Spot(to, middle), pen),
        Svg.line(new Spot(from, middle - TICK), new Spot(from, middle + TICK), pen),
        Svg.line(new Spot(to, middle - TICK), new Spot(to, middle + TICK), pen));
  }

  private static String label(Weight weight) {
    String term = weight.observation().trait().term();
    return weight.observation().isFound() ? term : "without " + term;
  }

  private static String times(Weight weight) {
    String factor = Printed.significant(Math.exp(Math.abs(log(weight))));
    return factor + (log(weight) > 0 ? " times more likely" : " times less likely");
  }

  private static double log(Weight weight) {
    return weight.logOdds().orElse(0);
  }

  private String title() {
    Weight only = weights.getFirst();
    return "%s: %s; nothing else is counted"
        .formatted(only.observation().toText(), OddsWords.of(only));
  }

  private String description() {
    return apart.isEmpty()
        ? "Every finding that a cohort supports is counted."
        : apart.stream()
            .map(w -> w.observation().toText())
            .collect(Collectors.joining(", ", "Not counted: ", "."));
  }

  private FigureTable table() {
    return new FigureTable(
        List.of("finding", "how much it moves MS"),
        Stream.concat(weights.stream(), apart.stream())
            .map(w -> List.of(w.observation().toText(), OddsWords.of(w)))
            .toList());
  }
}
