package cistern.report.plan;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.ResultEffect;
import cistern.puncture.decision.Contraindication;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheRisk;
import cistern.puncture.readiness.Guidance;
import cistern.puncture.readiness.GuidanceRules;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Place;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import cistern.report.wording.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The plan for the clinician: whether it matters, what is in the way, how to do it, what next. */
public final class PlanPaper {

  /** The first page lists no more than these under one heading. */
  private static final int MOST = 5;

  private static final String NO_PROMISE =
      "This plan does not say that a puncture is without danger; the doctor who does it decides.";

  private final Workup workup;
  private final PuncturePlan plan;
  private final PrintedTime times;
  private final DecisionSections decision;

  private PlanPaper(Workup workup, PuncturePlan plan, PrintedTime times) {
    this.workup = workup;
    this.plan = plan;
    this.times = times;
    this.decision = new DecisionSections(plan, times);
  }

  /**
   * The paper of a plan with each time as it was given.
   *
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, String foot) {
    return of(workup, plan, PrintedTime.AS_GIVEN, foot);
  }

  /**
   * The paper of a plan: one page with what leads, and an annex.
   *
   * @param times how times are printed
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, PrintedTime times, String foot) {
    PrintedTime own = times.like(WhosePuncture.at(plan));
    return new PlanPaper(workup, plan, own).paper(foot);
  }

  private Paper paper(String foot) {
    List<Section> sections = new ArrayList<>(firstPage());
    annex().stream()
        .map(s -> new Section(s.heading(), s.blocks(), Place.ANNEX))
        .forEach(sections::add);
    return new Paper(
        WhosePuncture.front("Plan for the lumbar puncture", workup, plan, times),
        answer(),
        sections,
        foot);
  }

  /** What fits on one side: what is in the way, what is open, drugs in time, tubes, who is told. */
  private List<Section> firstPage() {
    if (plan.isDone()) {
      return new AfterSections(plan, times).first();
    }
    List<Section> all = new ArrayList<>();
    listed("What stands in the way, by weight", decision.present()).ifPresent(all::add);
    listed("Open: ask", decision.open()).ifPresent(all::add);
    new BleedingSections(plan, times).first().ifPresent(all::add);
    if (!isForbidden()) {
      all.add(new TubeSections(plan.tubes()).first());
    }
    all.add(WhoIsTold.of(plan));
    return all;
  }

  private boolean isForbidden() {
    return plan.decision().verdict().go() == Contraindication.Go.DO_NOT;
  }

  /** A short list; what is over stands in the annex. */
  private static Optional<Section> listed(String heading, List<Line> lines) {
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    List<Line> told = new ArrayList<>(lines.subList(0, Math.min(MOST, lines.size())));
    if (lines.size() > MOST) {
      told.add(Line.of("%d more in the annex.".formatted(lines.size() - MOST)));
    }
    return Optional.of(Section.of(heading, new Items("", told)));
  }

  private List<Section> annex() {
    List<Section> all = new ArrayList<>();
    if (!plan.isDone()) {
      all.addAll(beforehand());
    }
    all.addAll(new AfterSections(plan, times).details());
    if (plan.isDone() && !plan.bleeding().antithrombotics().isEmpty()) {
      all.add(decision.drugs());
      all.addAll(new BleedingSections(plan, times).sections());
    }
    if (!workup.problems().isEmpty()) {
      all.add(problems());
    }
    return all;
  }

  /** What nobody reads again once the puncture is done. */
  private List<Section> beforehand() {
    List<Section> all = new ArrayList<>();
    over("What stands in the way, all of it", decision.present()).ifPresent(all::add);
    over("Open: ask, all of it", decision.open()).ifPresent(all::add);
    all.add(decision.drugs());
    all.add(precautions());
    all.addAll(new BleedingSections(plan, times).sections());
    all.add(guidance());
    all.add(technique());
    all.add(risk());
    all.add(new TubeSections(plan.tubes()).details());
    all.add(consent());
    return all;
  }

  private static Optional<Section> over(String heading, List<Line> lines) {
    return lines.size() > MOST
        ? Optional.of(Section.of(heading, new Items("", lines)))
        : Optional.empty();
  }

  /** What is urgent, whether to go on, and whether the result would matter. */
  private List<Line> answer() {
    if (plan.isDone()) {
      return decision.urgent().isEmpty()
          ? List.of(Line.of(plan.afterwards().headache().conclusion()))
          : decision.urgent();
    }
    List<Line> lines = new ArrayList<>(decision.urgent());
    lines.add(isForbidden() ? 0 : lines.size(), decision.verdict());
    lines.add(Line.of(effect()));
    lines.add(Line.of(NO_PROMISE));
    return lines;
  }

  private String effect() {
    if (plan.effects().isEmpty()) {
      return "Whether the result would matter is not known.";
    }
    String each = plan.effects().stream().map(PlanPaper::effect).collect(Collectors.joining("; "));
    return plan.isWithoutEffect()
        ? "The result would change nothing in the criteria ("
            + each
            + "). It could still speak for or against another cause: is that the question?"
        : "What the result could do: " + each + ".";
  }

  private static String effect(ResultEffect effect) {
    return "criteria of " + effect.edition() + ": " + effect.effect().text();
  }

  private Section precautions() {
    return Section.of(
        "Before",
        items("Present", Precaution.State.PRESENT),
        items("Open: ask", Precaution.State.OPEN),
        items("Looked at", Precaution.State.CHECKED));
  }

  private Items items(String heading, Precaution.State state) {
    List<Line> lines =
        plan.readiness().with(state).stream().map(p -> new Line(p.text(), p.grounds())).toList();
    return new Items(heading, lines.isEmpty() ? List.of(Line.of("Nothing.")) : lines);
  }

  private Section guidance() {
    Guidance guidance = plan.technique().guidance();
    List<Line> lines = new ArrayList<>();
    lines.add(
        Line.of(
            switch (guidance.method()) {
              case LANDMARKS -> "Landmarks: no difficulty is recorded.";
              case ULTRASOUND ->
                  "Consider ultrasound because of: " + String.join(", ", guidance.reasons()) + ".";
              case ULTRASOUND_OR_FLUOROSCOPY ->
                  "Consider ultrasound, or fluoroscopy, because of: "
                      + String.join(", ", guidance.reasons())
                      + ".";
            }));
    if (!guidance.open().isEmpty()) {
      lines.add(Line.of("Ask about: " + String.join(", ", guidance.open()) + "."));
    }
    guidance.depth().ifPresent(depth -> lines.add(depth(depth)));
    guidance.advice().forEach(a -> lines.add(new Line(a.text(), a.grounds())));
    guidance.doses().forEach(d -> lines.add(new Line(GuidanceRules.toText(d) + ".", d.grounds())));
    return Section.of("Difficulty and guidance", new Paragraphs(lines));
  }

  private static Line depth(Guidance.Depth depth) {
    String how =
        depth.isMeasured() ? "measured on images" : "computed from the BMI for the oblique route";
    return new Line(
        "From skin to fluid about "
            + Printed.decimals(depth.cm(), 1)
            + " cm, "
            + how
            + (depth.isDeep() ? ": a longer needle may be needed." : "."),
        depth.grounds());
  }

  private Section technique() {
    return Section.of(
        "Needle and technique",
        new Items(
            "",
            plan.technique().advice().stream().map(a -> new Line(a.text(), a.grounds())).toList()));
  }

  private Section risk() {
    HeadacheRisk risk = plan.technique().headacheRisk();
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("Headache " + band(risk) + ". " + risk.label(), risk.grounds()));
    risk.figures()
        .forEach(
            f -> lines.add(new Line(f.text() + ": " + percent(f.share()) + " %.", f.grounds())));
    return Section.of("Headache: a band, unvalidated", new Paragraphs(lines), factors(risk));
  }

  static String band(HeadacheRisk risk) {
    String low = percent(risk.low());
    String high = percent(risk.high());
    return low.equals(high) ? "in about " + low + " %" : "in " + low + " to " + high + " %";
  }

  private static String percent(double share) {
    return Printed.decimals(share * 100, share < 0.1 ? 1 : 0);
  }

  private static Table factors(HeadacheRisk risk) {
    List<Row> rows =
        risk.factors().stream()
            .map(
                f ->
                    new Row(
                        List.of(f.term(), f.state().word().replace('-', ' '), f.note()),
                        f.grounds()))
            .toList();
    return new Table("Factor by factor", List.of("Factor", "state", "note"), rows);
  }

  private Section consent() {
    return Section.of(
        "Consent: topics, the wording is local",
        new Items("", plan.readiness().consent().stream().map(Line::of).toList()));
  }

  private Section problems() {
    return Section.of(
        "Problems with the input",
        new Items(
            "",
            workup.problems().stream()
                .map(p -> new Line(p.text() + " (" + p.place() + ")", Grounds.MEASURED))
                .toList()));
  }
}
