package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.form.Typing;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.workup.WorkupReading;
import cistern.interpretation.Interpretation;
import cistern.puncture.PuncturePlan;
import cistern.puncture.bleeding.AntithromboticPlan;
import cistern.puncture.guideline.Precaution;
import cistern.report.figure.HoldTimeLine;
import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.paper.Paper;
import cistern.report.plan.PlanPaper;
import cistern.statement.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the program makes of what stands in the fields of a form, without saving it: the fields that
 * can be read count, the others are asked about.
 */
final class StepLook {

  private final StepForm form;
  private final Medicine medicine;
  private final Typing typing;
  private final Interpretation said;
  private final List<String> others;

  private StepLook(
      StepForm form, Medicine medicine, Typing typing, Interpretation said, List<String> others) {
    this.form = form;
    this.medicine = medicine;
    this.typing = typing;
    this.said = said;
    this.others = others;
  }

  /** The look of a form. */
  static StepLook of(StepForm form, Medicine medicine) {
    OpenCase open = form.open();
    Typing typing = form.typing();
    if (typing.isUnchanged(open.file())) {
      return new StepLook(form, medicine, typing, open.interpretation(), List.of());
    }
    Json.Structure changed = typing.applied(open.file(), open.file());
    if (medicine.read(JsonText.of(changed)) instanceof WorkupReading.NotValid notValid) {
      Map<String, String> notes = new TreeMap<>();
      List<String> others = new ArrayList<>();
      sort(notValid.problems(), typing, changed, notes, others);
      typing = typing.asking(notes);
      changed = typing.applied(open.file(), open.file());
      return medicine.read(JsonText.of(changed)) instanceof WorkupReading.Understood u
          ? new StepLook(form, medicine, typing, interpret(medicine, u), others)
          : new StepLook(form, medicine, typing, open.interpretation(), others);
    }
    return medicine.read(JsonText.of(changed)) instanceof WorkupReading.Understood u
        ? new StepLook(form, medicine, typing, interpret(medicine, u), List.of())
        : new StepLook(form, medicine, typing, open.interpretation(), List.of());
  }

  /** Problems beside the fields that they are about, and those about no field of the form. */
  static void sort(
      List<InputProblem> problems,
      Typing typing,
      Json.Structure file,
      Map<String, String> notesByKey,
      List<String> others) {
    for (InputProblem problem : problems) {
      typing
          .at(problem.place(), file)
          .ifPresentOrElse(
              field -> notesByKey.merge(field.key(), problem.text(), (a, b) -> a + " " + b),
              () -> others.add(problem.toText()));
    }
  }

  private static Interpretation interpret(Medicine medicine, WorkupReading.Understood read) {
    return medicine.interpret(medicine.asOfNow(read.workup()));
  }

  /** What the fields say that can be read. */
  Interpretation interpretation() {
    return said;
  }

  /** What is asked beside the fields that cannot. */
  Map<String, String> questions() {
    return typing.questions();
  }

  /** The whole of it, in words. */
  Node toNode() {
    List<Node> open = new ArrayList<>();
    typing
        .fields()
        .forEach(
            f -> {
              String question = typing.questions().get(f.key());
              if (question != null) {
                open.add(Html.text(f.label() + ": " + question));
              }
            });
    others.stream().map(Html::text).forEach(open::add);
    return open.isEmpty()
        ? said(said)
        : Fragment.of(Element.of("h2", "Not read yet"), Html.list(open, ""), said(said));
  }

  private static Node answer(Interpretation interpretation) {
    List<Statement> statements = interpretation.statements();
    return statements.isEmpty() ? nothing() : Html.paragraph(statements.getFirst().text());
  }

  /** What the plan answers first, and what is present or open. */
  private Node plan(Interpretation interpretation) {
    PuncturePlan plan = medicine.plan(interpretation);
    Paper paper = PlanPaper.of(interpretation.workup(), plan, "");
    List<Node> present =
        plan.readiness().with(Precaution.State.PRESENT).stream()
            .map(p -> Html.text(p.text()))
            .toList();
    return Fragment.of(
        Fragment.of(
            paper.answer().stream().map(l -> Html.paragraph(l.text())).toArray(Node[]::new)),
        present.isEmpty()
            ? nothing()
            : Fragment.of(Element.of("h3", "Present"), Html.list(present, "")),
        timeLines(plan.bleeding().antithrombotics()));
  }

  /** Last dose, intervals, puncture and next dose of each antithrombotic. */
  private static Node timeLines(List<AntithromboticPlan> drugs) {
    List<Node> figures = new ArrayList<>();
    for (int i = 0; i < drugs.size(); i++) {
      HoldTimeLine.of(drugs.get(i), "time-line-" + (i + 1))
          .map(f -> Element.of("figure", f.toSvg(), Element.of("figcaption", f.title())))
          .ifPresent(figures::add);
    }
    return figures.isEmpty()
        ? nothing()
        : division(
                "time-lines",
                Element.of("h3", "Antithrombotics in time"),
                Html.paragraph(HoldTimeLine.DEFER))
            .with(figures);
  }

  private Node said(Interpretation interpretation) {
    Node answer =
        switch (form.step()) {
          case PLAN, AFTER -> plan(interpretation);
          case QUESTION, DRAW, RESULTS, BANDS ->
              form.visit().isAllowed(Permission.READ_REPORT) ? answer(interpretation) : nothing();
        };
    Node problems =
        interpretation.problems().isEmpty()
            ? nothing()
            : division(
                "doubts",
                Element.of("h3", "To look at"),
                Html.list(
                    interpretation.problems().stream().map(p -> Html.text(p.text())).toList(), ""));
    return Fragment.of(Element.of("h2", "As it is typed"), answer, problems);
  }
}
