package cistern.report.plan;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.interpretation.Caution;
import cistern.interpretation.Workup;
import cistern.puncture.PuncturePlan;
import cistern.puncture.ResultEffect;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheRisk;
import cistern.puncture.readiness.Guidance;
import cistern.puncture.readiness.GuidanceRules;
import cistern.report.paper.Paper;
import cistern.report.paper.Paper.Items;
import cistern.report.paper.Paper.Line;
import cistern.report.paper.Paper.Paragraphs;
import cistern.report.paper.Paper.Row;
import cistern.report.paper.Paper.Section;
import cistern.report.paper.Paper.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The plan for the clinician: whether it matters, what is in the way, how to do it, what next. */
public final class PlanPaper {

  private final Workup workup;
  private final PuncturePlan plan;

  private PlanPaper(Workup workup, PuncturePlan plan) {
    this.workup = workup;
    this.plan = plan;
  }

  /**
   * The paper of a plan.
   *
   * @param foot what made it
   */
  public static Paper of(Workup workup, PuncturePlan plan, String foot) {
    return new PlanPaper(workup, plan).paper(foot);
  }

  /** What leads stands first; everything else is an annex. */
  private Paper paper(String foot) {
    List<Section> sections = new ArrayList<>();
    DecisionSections decision = new DecisionSections(plan);
    TubeSections tubes = new TubeSections(workup.id(), plan.tubes());
    AfterSections after = new AfterSections(plan);
    if (plan.isDone()) {
      sections.addAll(after.first());
    } else {
      sections.addAll(decision.first());
      sections.add(tubes.first());
    }
    sections.add(decision.drugs());
    sections.add(precautions());
    sections.addAll(new BleedingSections(plan).sections());
    sections.add(guidance());
    sections.add(technique());
    sections.add(risk());
    sections.addAll(tubes.sections());
    sections.addAll(after.sections());
    sections.add(consent());
    if (!workup.problems().isEmpty()) {
      sections.add(problems());
    }
    return new Paper(
        "Plan for the lumbar puncture, work-up " + workup.id(), answer(), sections, foot);
  }

  /** What is urgent, whether to go on, and whether the result would matter. */
  private List<Line> answer() {
    List<Line> lines = new ArrayList<>();
    DecisionSections decision = new DecisionSections(plan);
    lines.addAll(decision.urgent());
    if (plan.isDone() && decision.urgent().isEmpty()) {
      lines.add(Line.of(plan.afterwards().headache().conclusion()));
    }
    if (!plan.isDone()) {
      lines.add(decision.verdict());
      lines.add(Line.of(effect()));
      lines.add(
          Line.of(
              "This plan does not say that a puncture is without danger; the doctor who does it"
                  + " decides."));
    }
    if (workup.remarks().isInvented()) {
      lines.add(Line.of(Caution.INVENTED.text()));
    }
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
