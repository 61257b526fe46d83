package cistern.report.plan;

import cistern.fact.Grounds;
import cistern.finding.Printed;
import cistern.interpretation.Caution;
import cistern.interpretation.Workup;
import cistern.puncture.PunctureEffect;
import cistern.puncture.PuncturePlan;
import cistern.puncture.guideline.Precaution;
import cistern.puncture.headache.HeadacheRisk;
import cistern.puncture.headache.RiskFactor;
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

  private Paper paper(String foot) {
    List<Section> sections = new ArrayList<>();
    BleedingSections bleeding = new BleedingSections(plan);
    sections.add(precautions());
    sections.addAll(bleeding.sections());
    sections.add(guidance());
    sections.add(technique());
    sections.add(risk());
    sections.addAll(new TubeSections(workup.id(), plan.tubes()).sections());
    sections.addAll(new AfterSections(plan).sections());
    sections.add(consent());
    if (!workup.problems().isEmpty()) {
      sections.add(problems());
    }
    return new Paper(
        "Plan for the lumbar puncture, work-up " + workup.id(), answer(), sections, foot);
  }

  /** Would the result matter; if not, that comes first. */
  private List<Line> answer() {
    List<Line> lines = new ArrayList<>();
    lines.add(Line.of(effect()));
    long present = plan.readiness().with(Precaution.State.PRESENT).size();
    long open = plan.readiness().with(Precaution.State.OPEN).size();
    lines.add(
        Line.of(
            present
                + (present == 1 ? " precaution is" : " precautions are")
                + " present and "
                + open
                + (open == 1 ? " question is" : " questions are")
                + " open. This list does not say that a puncture is safe; the doctor who does it"
                + " decides."));
    if (workup.remarks().isInvented()) {
      lines.add(Line.of(Caution.INVENTED.text()));
    }
    if (!plan.afterwards().headache().present().isEmpty()) {
      lines.addFirst(Line.of(plan.afterwards().headache().conclusion()));
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

  private static String effect(PunctureEffect effect) {
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
    lines.add(new Line("Risk " + band(risk) + ". " + risk.label(), risk.grounds()));
    risk.baselines()
        .forEach(
            b ->
                lines.add(
                    new Line(
                        "Before any factor, "
                            + b.needle()
                            + " needle: "
                            + percent(b.risk())
                            + " %. Set your own figure by local policy.",
                        b.grounds())));
    return Section.of("Headache: a band, unvalidated", new Paragraphs(lines), factors(risk));
  }

  static String band(HeadacheRisk risk) {
    String low = percent(risk.low());
    String high = percent(risk.high());
    return low.equals(high) ? "about " + low + " %" : "between " + low + " and " + high + " %";
  }

  private static String percent(double share) {
    return Printed.decimals(share * 100, share < 0.1 ? 1 : 0);
  }

  private static Table factors(HeadacheRisk risk) {
    List<Row> rows = risk.factors().stream().map(f -> new Row(cells(f), f.grounds())).toList();
    return new Table("Factor by factor", List.of("Factor", "state", "odds ratio", "note"), rows);
  }

  private static List<String> cells(RiskFactor factor) {
    String ratio =
        factor.oddsRatio().isPresent() ? Printed.decimals(factor.oddsRatio().getAsDouble(), 2) : "";
    return List.of(factor.term(), factor.state().word().replace('-', ' '), ratio, factor.note());
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
