package cistern.report.figure;

import cistern.finding.Printed;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.GuidelineAnswer;
import cistern.puncture.bleeding.Hours;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The time line of one antithrombotic: hours from the last dose, one row a guideline with its
 * interval before a puncture and until the next dose, and the planned puncture. Ranges for
 * discussion: nothing of it is an instruction, and a time that is not known is not drawn.
 */
public final class HoldTimeLine {

  /** What stands beside every such figure. */
  public static final String DEFER =
      "Defer to local policy and the licensed prescriber. These are ranges for discussion, not"
          + " instructions; they are shown side by side and never averaged.";

  private static final double WIDTH = 440;
  private static final double LEFT = 6;
  private static final double RIGHT = WIDTH - 14;
  private static final double TOP = 54;
  private static final double ROW = 42;
  private static final double LINE = 18;
  private static final double BAR = 9;
  private static final double SECONDS_PER_HOUR = 3600;
  private static final double HOURS_PER_DAY = 24;
  private static final double FEWEST_HOURS = 12;
  private static final int MOST_TICKS = 8;
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("d MMM, HH:mm", Locale.UK);
  private static final DateTimeFormatter FULL =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm (xxx)", Locale.UK);

  private final AntithromboticPlan plan;
  private final LinearScale scale;

  private HoldTimeLine(AntithromboticPlan plan) {
    this.plan = plan;
    this.scale = new LinearScale(0, longest(), LEFT, RIGHT);
  }

  /**
   * The figure; none where no guideline gives an interval.
   *
   * @param id unique on a page
   */
  public static Optional<Figure> of(AntithromboticPlan plan, String id) {
    return plan.answers().stream().anyMatch(a -> a.hold().isPresent())
        ? Optional.of(new HoldTimeLine(plan).figure(id))
        : Optional.empty();
  }

  private double longest() {
    double longest = Math.max(FEWEST_HOURS, plan.hours().orElse(0));
    for (GuidelineAnswer answer : plan.answers()) {
      double hold = answer.hold().map(Hours::most).orElse(0.0);
      double from = plan.hours().orElse(hold);
      longest = Math.max(longest, Math.max(hold, from + next(answer).map(Hours::most).orElse(0.0)));
    }
    return longest * 1.04;
  }

  /** Hours from a puncture to the next dose, where it is known when the puncture is. */
  private Optional<Hours> next(GuidelineAnswer answer) {
    return answer.hold().isPresent() || plan.hours().isPresent()
        ? answer.restart()
        : Optional.empty();
  }

  private Figure figure(String id) {
    List<Element> shapes = new ArrayList<>();
    double bottom = TOP + speaking().size() * ROW + silent().size() * LINE;
    shapes.addAll(axis(bottom));
    plan.hours().ifPresent(hours -> shapes.addAll(puncture(hours, bottom)));
    double top = TOP;
    for (GuidelineAnswer answer : speaking()) {
      shapes.addAll(row(answer, top));
      top += ROW;
    }
    for (GuidelineAnswer answer : silent()) {
      shapes.addAll(label(answer, top));
      top += LINE;
    }
    return new Figure(id, title(), description(), new Spot(WIDTH, bottom + 38), shapes, table());
  }

  /** Those that give hours, in their order. */
  private List<GuidelineAnswer> speaking() {
    return plan.answers().stream().filter(this::isSpeaking).toList();
  }

  private List<GuidelineAnswer> silent() {
    return plan.answers().stream().filter(a -> !isSpeaking(a)).toList();
  }

  private boolean isSpeaking(GuidelineAnswer answer) {
    return answer.hold().isPresent() || next(answer).isPresent();
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
        .formatted(sentence(plan.taken().name()), lastDose(FULL), given, counted);
  }

  private String lastDose(DateTimeFormatter format) {
    return plan.taken()
        .lastDoseAt()
        .map(at -> "last dose " + clock(at, format))
        .orElse("the time of the last dose is not known");
  }

  private static String clock(OffsetDateTime at, DateTimeFormatter format) {
    return format.format(at).replace("(+00:00)", "(UTC)");
  }

  private List<Element> axis(double bottom) {
    List<Element> shapes = new ArrayList<>();
    Lettering small = Lettering.of(Token.QUIET);
    shapes.add(Svg.label(new Spot(LEFT, 14), sentence(lastDose(CLOCK)), Lettering.of(Token.INK)));
    shapes.add(
        Svg.line(new Spot(LEFT, TOP - 34), new Spot(LEFT, bottom), Pen.line(Token.INK, 1.5)));
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
              hour == 0 ? small : small.with(Lettering.Anchor.MIDDLE)));
    }
    shapes.add(Svg.label(new Spot(LEFT, bottom + 32), "hours since the last dose", small));
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

  private static List<Element> label(GuidelineAnswer answer, double top) {
    return Svg.labelOnPaper(
        new Spot(LEFT + 6, top),
        answer.guideline().title() + ": " + words(answer),
        Lettering.of(Token.INK));
  }

  private List<Element> row(GuidelineAnswer answer, double top) {
    List<Element> shapes = new ArrayList<>();
    shapes.addAll(label(answer, top));
    double y = top + BAR;
    answer.hold().filter(h -> h.most() > 0).ifPresent(h -> shapes.addAll(bar(h, y)));
    next(answer)
        .ifPresent(
            restart -> {
              double from = plan.hours().orElse(answer.hold().map(Hours::most).orElse(0.0));
              double middle = y + BAR / 2;
              shapes.add(
                  Svg.line(
                      new Spot(scale.at(from), middle),
                      new Spot(scale.at(from + restart.most()), middle),
                      Pen.line(Token.BLOOD, 1.5).withDash("3 3")));
              shapes.add(
                  Svg.circle(
                      new Spot(scale.at(from + restart.least()), middle),
                      3.5,
                      Pen.line(Token.BLOOD, 1.5).withFill(Token.PAPER)));
            });
    return shapes;
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
    boolean isLate = x > WIDTH / 2;
    Lettering letters =
        Lettering.of(Token.FLUID)
            .withBold()
            .with(isLate ? Lettering.Anchor.END : Lettering.Anchor.START);
    return List.of(
        Svg.line(new Spot(x, TOP - 28), new Spot(x, bottom), Pen.line(Token.FLUID, 1.5)),
        Svg.label(new Spot(isLate ? x - 4 : x + 4, TOP - 20), planned(hours, CLOCK), letters));
  }

  private String planned(double hours, DateTimeFormatter format) {
    return "puncture planned"
        + plan.taken()
            .lastDoseAt()
            .map(at -> " " + clock(after(at, hours), format))
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
            ? sentence(planned(hours.getAsDouble(), FULL))
            : "The time from the last dose to the puncture is not known";
    return sentence(lastDose(FULL)) + ". " + when + ". " + rows + ".";
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
                                + clock(after(at, h.least()), FULL)
                                + (h.most() > h.least()
                                    ? " to " + clock(after(at, h.most()), FULL)
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
