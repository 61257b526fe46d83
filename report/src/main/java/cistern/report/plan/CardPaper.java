package cistern.report.plan;

import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.bleeding.Hours;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Front;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Kind;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Section;
import cistern.report.wording.PrintedTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The plan as a card for the pocket: what is urgent, the verdict, drugs, tubes, what to do. */
public final class CardPaper {

  private static final int MOST = 3;
  private static final List<String> TO_NOTE =
      List.of(
          "Two identifiers checked ______  site and side checked ______",
          "Drawn at ________  level ______  needle ______  attempts ___",
          "Opening pressure ______ cmH₂O, lying  volume ______ mL",
          "Colour ______________  stylet put back before withdrawal ___");
  private static final double SECONDS_PER_HOUR = 3600;

  private final PuncturePlan plan;
  private final PrintedTime times;
  private final DecisionSections decision;

  private CardPaper(PuncturePlan plan, PrintedTime times) {
    this.plan = plan;
    this.times = times;
    this.decision = new DecisionSections(plan, times);
  }

  /**
   * The card of a plan.
   *
   * @param times how times are printed
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, PrintedTime times, String foot) {
    PrintedTime own = times.like(WhosePuncture.at(plan));
    Front front = WhosePuncture.front("Lumbar puncture", workup, plan, own);
    CardPaper card = new CardPaper(plan, own);
    return new Paper(
        new Front(
            Kind.CARD,
            front.title(),
            front.taken(),
            front.banner(),
            front.language(),
            front.seal()),
        card.answer(),
        card.sections(),
        foot);
  }

  private List<Line> answer() {
    List<Line> lines = new ArrayList<>();
    decision.urgent().stream().limit(MOST).map(l -> Line.of(l.text())).forEach(lines::add);
    if (!plan.isDone()) {
      lines.add(Line.of(decision.verdict().text()));
    }
    return lines;
  }

  private List<Section> sections() {
    List<Section> all = new ArrayList<>();
    if (!plan.isDone()) {
      listed("Ask", shortened(decision.open())).ifPresent(all::add);
    }
    listed("Last doses", drugs()).ifPresent(all::add);
    all.add(Section.of("Tubes", Items.of(tubes())));
    if (!plan.isDone()) {
      all.add(Section.of("Note at the bedside", Items.of(TO_NOTE)));
    }
    plan.procedure()
        .after()
        .contact()
        .ifPresent(c -> all.add(Section.of("Call", Items.of(List.of(c)))));
    return all;
  }

  private static List<String> shortened(List<Line> lines) {
    List<String> told = new ArrayList<>(lines.stream().limit(MOST).map(Line::text).toList());
    if (lines.size() > MOST) {
      told.add("%d more on the plan.".formatted(lines.size() - MOST));
    }
    return told;
  }

  private static Optional<Section> listed(String heading, List<String> sentences) {
    return sentences.isEmpty()
        ? Optional.empty()
        : Optional.of(Section.of(heading, Items.of(sentences)));
  }

  private List<String> drugs() {
    return plan.bleeding().antithrombotics().stream().map(this::drug).toList();
  }

  /** From the shortest to the longest interval that a guideline gives. */
  private String drug(AntithromboticPlan drug) {
    List<Hours> holds = drug.answers().stream().flatMap(a -> a.hold().stream()).toList();
    if (holds.isEmpty()) {
      return drug.taken().name() + ": ask the prescriber, no interval is given here.";
    }
    double least = holds.stream().mapToDouble(Hours::least).min().orElseThrow();
    double most = holds.stream().mapToDouble(Hours::most).max().orElseThrow();
    String clock =
        drug.taken()
            .lastDoseAt()
            .filter(at -> most > 0)
            .map(at -> ": " + after(at, least) + (most > least ? " to " + after(at, most) : ""))
            .orElse("");
    String sources = holds.size() == 1 ? "1 guideline" : holds.size() + " guidelines";
    return "%s: %s (%s)%s; the prescriber decides."
        .formatted(drug.taken().name(), new Hours(least, most).toText(), sources, clock);
  }

  private String after(OffsetDateTime dose, double hours) {
    return times.inShort(dose.plusSeconds(Math.round(hours * SECONDS_PER_HOUR)));
  }

  private List<String> tubes() {
    List<String> lines =
        new ArrayList<>(
            plan.tubes().tubes().stream()
                .map(
                    t ->
                        "%d: %s mL, %s"
                            .formatted(t.order(), TubeSections.ml(t.ml()), TubeSections.tests(t)))
                .toList());
    lines.add("Serum of the same visit; label every tube at the bedside.");
    return lines;
  }
}
