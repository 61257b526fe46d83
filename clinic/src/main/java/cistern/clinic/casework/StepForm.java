package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.nothing;

import cistern.clinic.account.Permission;
import cistern.clinic.form.CaseStep;
import cistern.clinic.form.Typable;
import cistern.clinic.form.Typing;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
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

/**
 * One form with what stands in it.
 *
 * @param visit who types
 * @param open the case as it stands
 * @param step the form
 * @param base the version that the form was opened on
 * @param typing what stands in the fields
 */
record StepForm(PageRequest visit, OpenCase open, CaseStep step, long base, Typing typing) {

  StepForm withBase(long newer) {
    return new StepForm(visit, open, step, newer, typing);
  }

  /** The form, with a note beside some fields. */
  Element toElement(Map<String, String> notesByKey) {
    String path = "/cases/" + open.version().caseId() + "/" + step.word();
    List<Node> groups = new ArrayList<>();
    String group = "";
    List<Node> fields = new ArrayList<>();
    for (Typable field : typing.fields()) {
      if (!field.group().equals(group)) {
        close(groups, group, fields);
        group = field.group();
        fields = new ArrayList<>();
      }
      fields.add(field(field, notesByKey.getOrDefault(field.key(), "")));
    }
    close(groups, group, fields);
    return visit
        .form(path)
        .with("data-keep", path)
        .with("data-look", "look")
        .with("data-look-at", path + "/look")
        .with("class", step == CaseStep.RESULTS ? "step dense" : "step")
        .with(
            Element.of("input")
                .with("type", "hidden")
                .with("name", "base")
                .with("value", Long.toString(base)))
        .with(groups)
        .with(Html.button("Save"));
  }

  private static void close(List<Node> groups, String group, List<Node> fields) {
    if (!fields.isEmpty()) {
      groups.add(Element.of("fieldset", Element.of("legend", words(group))).with(fields));
    }
  }

  /** A heading as it is read: the families of analytes have names of their own. */
  private static String words(String group) {
    return switch (group) {
      case "PROTEIN" -> "Proteins";
      case "IMMUNOGLOBULIN" -> "Immunoglobulins";
      case "LIGHT_CHAIN" -> "Free light chains";
      case "METABOLITE" -> "Glucose and lactate";
      case "CELLS" -> "Cells";
      case "FRACTION" -> "Fractions";
      case "SPECIFIC_ANTIBODY" -> "Specific antibodies";
      default -> group;
    };
  }

  private Node field(Typable field, String note) {
    Element control = field.toControl(typing.shown(field, open.file()));
    if (note.isEmpty()) {
      return Html.field(field.label(), control);
    }
    String id = "n-" + field.key();
    return Html.field(
            field.label(), control.with("aria-invalid", "true").with("aria-describedby", id))
        .with(Element.of("p", note).with("class", "doubt").with("id", id));
  }

  /** What the program makes of what stands in the fields, without saving it. */
  Node look(Medicine medicine) {
    Json.Structure changed = typing.applied(open.file(), open.file());
    return switch (medicine.read(JsonText.of(changed))) {
      case WorkupReading.NotValid notValid ->
          Fragment.of(
              Element.of("h2", "Not read yet"),
              Html.list(
                  notValid.problems().stream()
                      .map(p -> Html.text(words(p.place(), changed) + p.text()))
                      .toList(),
                  ""));
      case WorkupReading.Understood understood ->
          said(medicine, medicine.interpret(medicine.asOfNow(understood.workup())));
    };
  }

  private static Node answer(Interpretation interpretation) {
    List<Statement> statements = interpretation.statements();
    return statements.isEmpty() ? nothing() : Html.paragraph(statements.getFirst().text());
  }

  /** What the plan answers first, and what is present or open. */
  private static Node plan(Medicine medicine, Interpretation interpretation) {
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

  private String words(String place, Json.Structure file) {
    return typing.at(place, file).map(f -> f.label() + ": ").orElse("");
  }

  private Node said(Medicine medicine, Interpretation interpretation) {
    Node answer =
        switch (step) {
          case PLAN, AFTER -> plan(medicine, interpretation);
          case QUESTION, DRAW, RESULTS, BANDS ->
              visit.isAllowed(Permission.READ_REPORT) ? answer(interpretation) : nothing();
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
