package cistern.report.figure;

import cistern.finding.Printed;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.Hours;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import cistern.report.wording.PrintedTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * One antithrombotic in time: hours from the last dose, one row a guideline that gives an interval
 * before a puncture, the earliest time by it, and the planned puncture. Ranges for discussion:
 * nothing of it is an instruction, and a time that is not known is not drawn.
 */
public final class HoldTimeLine {

  /** What stands beside every such figure. */
  public static final String DEFER =
      "Defer to local policy and the licensed prescriber. These are ranges for discussion, not"
          + " instructions; they are shown side by side and never averaged.";

  private static final double WIDTH = 590;
  private static final double LEFT = 258;
  private static final double RIGHT = 410;
  private static final double CLOCK_AT = 420;
  private static final double TOP = 24;
  private static final double ROW = 16;
  private static final double BAR = 7;
  private static final double SECONDS_PER_HOUR = 3600;
  private static final double HOURS_PER_DAY = 24;
  private static final double FEWEST_HOURS = 12;
  private static final int MOST_TICKS = 4;

  private final AntithromboticPlan plan;
  private final PrintedTime times;
  private final LinearScale scale;

  private HoldTimeLine(AntithromboticPlan plan, PrintedTime times) {
    this.plan = plan;
    this.times = times.like(plan.taken().lastDoseAt());
    this.scale = new LinearScale(0, longest(), LEFT, RIGHT);
  }

  /**
   * The figure with each time as it was given.
   *
   * @param id unique on a page
   */
  public static Optional<Figure> of(AntithromboticPlan plan, String id) {
    return of(plan, id, PrintedTime.AS_GIVEN);
  }

  /**
   * The figure; none where no guideline asks for an interval.
   *
   * @param id unique on a page
   * @param times how times are printed
   */
  public static Optional<Figure> of(AntithromboticPlan plan, String id, PrintedTime times) {
    return plan.answers().stream().flatMap(a -> a.hold().stream()).anyMatch(h -> h.most() > 0)
        ? Optional.of(new HoldTimeLine(plan, times).figure(id))
        : Optional.empty();
  }

  private double longest() {
    double longest = Math.max(FEWEST_HOURS, plan.hours().orElse(0));
    for (GuidelineAnswer answer : speaking()) {
      longest = Math.max(longest, answer.hold().map(Hours::most).orElse(0.0));
    }
    return longest * 1.04;
  }

  private Figure figure(String id) {
    List<Element> shapes = new ArrayList<>();
    double bottom = TOP + speaking().size() * ROW;
    shapes.addAll(axis(bottom));
    double top = TOP;
    for (GuidelineAnswer answer : speaking()) {
      shapes.addAll(row(answer, top));
      top += ROW;
    }
    plan.hours().ifPresent(hours -> shapes.addAll(puncture(hours, bottom)));
    return new Figure(id, title(), description(), new Spot(WIDTH, bottom + 22), shapes, table());
  }

  /** Those that give hours before a puncture, in their order. */
  private List<GuidelineAnswer> speaking() {
    return plan.answers().stream().filter(a -> a.hold().isPresent()).toList();
  }

  private String title() {
    List<Hours> holds = plan.answers().stream().flatMap(a -> a.hold().stream()).toList();
    String given =
        holds.size() == 1
            ? "1 source gives an interval"
            : holds.size() + " sources give an interval";
    OptionalDouble hours = plan.hours();
    long passed = holds.stream().filter(h -> hours.orElse(0) >= h.most()).count();
    String counted =
        hours.isPresent()
            ? Printed.decimals(hours.getAsDouble(), 1)
                + " h to the planned puncture, by which "
                + (passed == 0
                    ? "none has passed"
                    : passed + (passed == 1 ? " has" : " have") + " passed")
            : "the time from it to the puncture is not known";
    return "%s, %s: %s; %s"
        .formatted(sentence(plan.taken().name()), lastDose(times::at), given, counted);
  }

  private String lastDose(Function<OffsetDateTime, String> print) {
    return plan.taken()
        .lastDoseAt()
        .map(at -> "last dose " + print.apply(at))
        .orElse("the time of the last dose is not known");
  }

  private List<Element> axis(double bottom) {
    List<Element> shapes = new ArrayList<>();
    Lettering small = Lettering.of(Token.QUIET);
    shapes.add(Svg.line(new Spot(LEFT, TOP - 4), new Spot(LEFT, bottom), Pen.line(Token.INK, 1.2)));
    shapes.add(
        Svg.line(new Spot(LEFT, bottom), new Spot(RIGHT, bottom), Pen.line(Token.HAIRLINE, 1)));
    double step = step();
    for (double hour = 0; hour <= longest(); hour += step) {
      double x = scale.at(hour);
      shapes.add(Svg.line(new Spot(x, bottom), new Spot(x, bottom + 4), Pen.line(Token.INK, 1)));
      shapes.add(
          Svg.label(
              new Spot(x, bottom + 16),
              Printed.decimals(hour, 0),
              small.with(Lettering.Anchor.MIDDLE)));
    }
    shapes.add(Svg.label(new Spot(0, bottom + 16), "hours since the last dose", small));
    shapes.add(Svg.label(new Spot(CLOCK_AT, TOP - 8), "earliest by it", small));
    return shapes;
  }

  /** Whole parts of days, or days, so that the ticks stay few. */
  private double step() {
    double longest = longest();
    return Stream.of(2.0, 4.0, 6.0, 12.0, HOURS_PER_DAY, 2 * HOURS_PER_DAY, 7 * HOURS_PER_DAY)
        .filter(s -> longest / s <= MOST_TICKS)
        .findFirst()
        .orElse(28 * HOURS_PER_DAY);
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private List<Element> row(GuidelineAnswer answer, double top) {
    List<Element> shapes = new ArrayList<>();
    double baseline = top + BAR + 4;
    Lettering ink = Lettering.of(Token.INK);
    shapes.add(Svg.label(new Spot(0, baseline), name(answer), ink));
    answer.hold().filter(h -> h.most() > 0).ifPresent(h -> shapes.addAll(bar(h, top + 3)));
    shapes.add(Svg.label(new Spot(CLOCK_AT, baseline), first(answer), ink));
    return shapes;
  }

  /** Its title without what stands in brackets, which the annex holds. */
  private static String name(GuidelineAnswer answer) {
    String title = answer.guideline().title();
    int bracket = title.indexOf(" (");
    return bracket < 0 ? title : title.substring(0, bracket);
  }

  /** The earliest puncture by one interval, short; in hours where the dose has no time. */
  private String first(GuidelineAnswer answer) {
    Hours hold = answer.hold().orElseThrow();
    if (hold.most() == 0) {
      return "no interval";
    }
    return plan.taken().lastDoseAt().map(at -> first(at, hold)).orElse(hold.toText());
  }

  private String first(OffsetDateTime dose, Hours hold) {
    String least = times.inShort(after(dose, hold.least()));
    return hold.most() > hold.least()
        ? least + "–" + times.inShort(after(dose, hold.most()))
        : least;
  }

  private List<Element> bar(Hours hold, double y) {
    Spot start = new Spot(scale.at(0), y);
    Pen sure = Pen.area(Token.BLOOD);
    Pen range = Pen.line(Token.BLOOD, 1).withFill(Token.BLOOD_TINT);
    List<Element> shapes = new ArrayList<>();
    shapes.add(Svg.rectangle(start, new Spot(scale.at(hold.least()), y + BAR), sure));
    if (hold.most() > hold.least()) {
      shapes.add(
          Svg.rectangle(
              new Spot(scale.at(hold.least()), y),
              new Spot(scale.at(hold.most()), y + BAR),
              range));
    }
    return shapes;
  }

  /** The planned puncture, through all rows. */
  private List<Element> puncture(double hours, double bottom) {
    double x = scale.at(hours);
    Lettering letters = Lettering.of(Token.FLUID).withBold().with(Lettering.Anchor.END);
    return List.of(
        Svg.line(new Spot(x, TOP - 6), new Spot(x, bottom), Pen.line(Token.FLUID, 1.5)),
        Svg.label(new Spot(RIGHT, TOP - 10), planned(hours, times::inShort), letters));
  }

  private String planned(double hours, Function<OffsetDateTime, String> print) {
    return "puncture planned"
        + plan.taken()
            .lastDoseAt()
            .map(at -> " " + print.apply(after(at, hours)))
            .orElse(" after " + Printed.decimals(hours, 1) + " h");
  }

  private static OffsetDateTime after(OffsetDateTime at, double hours) {
    return at.plusSeconds(Math.round(hours * SECONDS_PER_HOUR));
  }

  private static String words(GuidelineAnswer answer) {
    return answer
        .restart()
        .map(restart -> before(answer) + ", next dose after " + restart.toText())
        .orElse(before(answer));
  }

  private static String before(GuidelineAnswer answer) {
    String silent = answer.restart().isPresent() ? "nothing said of before" : "ask the prescriber";
    return answer.hold().map(Hours::toText).orElse(silent);
  }

  private String description() {
    String rows =
        String.join(
            ". ",
            plan.answers().stream()
                .map(
                    a ->
                        a.guideline().title()
                            + ": "
                            + words(a)
                            + earliest(a).map(e -> ", " + e).orElse(""))
                .toList());
    OptionalDouble hours = plan.hours();
    String when =
        hours.isPresent()
            ? sentence(planned(hours.getAsDouble(), times::at))
            : "The time from the last dose to the puncture is not known";
    return sentence(lastDose(times::at)) + ". " + when + ". " + rows + ".";
  }

  /** The earliest puncture by one interval, on the clock; nothing where the dose has no time. */
  private Optional<String> earliest(GuidelineAnswer answer) {
    return plan.taken()
        .lastDoseAt()
        .flatMap(
            at ->
                answer
                    .hold()
                    .map(
                        h ->
                            "by it not before "
                                + times.at(after(at, h.least()))
                                + (h.most() > h.least()
                                    ? " to " + times.at(after(at, h.most()))
                                    : "")));
  }

  private FigureTable table() {
    List<List<String>> rows =
        plan.answers().stream()
            .map(
                a ->
                    List.of(
                        a.guideline().title(),
                        before(a),
                        earliest(a).orElse("no clock time: " + unknown(a)),
                        a.restart().map(Hours::toText).orElse("not given"),
                        a.grounds().status().word()))
            .toList();
    return new FigureTable(
        List.of(
            "Guideline", "before a puncture", "on the clock", "until the next dose", "known how"),
        rows);
  }

  private static String unknown(GuidelineAnswer answer) {
    return answer.hold().isPresent()
        ? "the time of the last dose is not known"
        : "no interval is given";
  }
}
