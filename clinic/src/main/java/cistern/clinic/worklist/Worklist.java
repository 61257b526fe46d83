package cistern.clinic.worklist;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.casework.CaseContext;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.exchange.workup.WorkupReading;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** The day, the list of cases, and how a case begins: with its name, or with a work-up file. */
public final class Worklist {

  private final CaseContext context;
  private final CaseList list;
  private final Timetable day;

  private Worklist(CaseContext context) {
    this.context = context;
    this.list = new CaseList(context);
    this.day = new Timetable(context, list);
  }

  /** The cases of a clinic. */
  public static Worklist of(CaseContext context) {
    return new Worklist(context);
  }

  /** Their routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/day", Permission.SEE_DAY, day::page),
        Route.get("/cases", Permission.SEE_CASE, v -> cases(v, HttpStatus.OK, nothing())),
        Route.post("/cases/find", Permission.SEE_CASE, this::find),
        Route.post("/cases", Permission.WORK_UP, this::begin),
        new SentScreen(context, list).route(),
        Route.post("/import", Permission.WORK_UP, this::preview),
        Route.post("/import/take", Permission.WORK_UP, this::take));
  }

  private ServerResponse cases(PageRequest visit, HttpStatus status, Node said) {
    return cases(visit, status, said, list.page(visit));
  }

  private ServerResponse find(PageRequest visit) {
    return cases(visit, HttpStatus.OK, nothing(), list.found(visit));
  }

  private ServerResponse cases(PageRequest visit, HttpStatus status, Node said, Node cases) {
    return Responses.page(
        status,
        context
            .frame()
            .toHtml(
                visit,
                "Cases",
                Element.of("h1", "Cases"),
                said,
                cases,
                visit.isAllowed(Permission.WORK_UP) ? beginning(visit) : nothing()));
  }

  private static Node beginning(PageRequest visit) {
    return division(
        "beginnings",
        section("new", "A new case", newCase(visit)),
        section(
            "file",
            "From a work-up file",
            visit
                .form("/import")
                .with(
                    field(
                        "The text of the file", Html.area("file", "").with("spellcheck", "false")),
                    button("Preview"))));
  }

  /** The form that begins a case. */
  static Element newCase(PageRequest visit) {
    return visit
        .form("/cases")
        .with(
            field(
                "A name for the case, without anything that tells who it is",
                input("name", "").with("autocomplete", "off")),
            button("Begin"));
  }

  private ServerResponse begin(PageRequest visit) {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("workup", new Json.Numeral("1"));
    String name = visit.field("name").replaceAll("\\s+", "-");
    members.put("id", new Json.Text(name));
    if (context.frame().isInvented()) {
      members.put("invented", new Json.Truth(true));
    }
    members.put("results", new Json.Sequence(List.of()));
    return begin(visit, JsonText.of(new Json.Structure(members)));
  }

  private ServerResponse begin(PageRequest visit, String workup) {
    return switch (context.medicine().read(workup)) {
      case WorkupReading.NotValid notValid ->
          cases(visit, HttpStatus.UNPROCESSABLE_CONTENT, problems(notValid));
      case WorkupReading.Understood understood -> {
        String named = context.names().unlike(understood);
        CaseVersion version = context.cases().add("begun", named, visit.account().id());
        yield Responses.see("/cases/" + version.caseId());
      }
    };
  }

  private static Element problems(WorkupReading.NotValid notValid) {
    return division(
            "trouble",
            Html.paragraph("No case was made, because this could not be read:"),
            list(notValid.problems().stream().map(p -> text(p.toText())).toList(), ""))
        .with("role", "alert");
  }

  private ServerResponse preview(PageRequest visit) {
    String file = visit.field("file");
    return switch (context.medicine().read(file)) {
      case WorkupReading.NotValid notValid ->
          cases(visit, HttpStatus.UNPROCESSABLE_CONTENT, problems(notValid));
      case WorkupReading.Understood understood ->
          Responses.page(
              context.frame().toHtml(visit, "Preview", preview(visit, file, understood)));
    };
  }

  private Node preview(PageRequest visit, String file, WorkupReading.Understood understood) {
    List<List<Node>> rows =
        understood.workup().panel().results().values().stream()
            .map(
                m ->
                    List.<Node>of(
                        text(m.sample().term()),
                        text(Amounts.of(m.value())),
                        text(m.sample().analyte().unit().ucum())))
            .toList();
    List<Node> kept =
        understood.workup().problems().stream()
            .map(p -> text(p.place().isEmpty() ? p.text() : p.place() + ": " + p.text()))
            .toList();
    return division(
        "preview",
        Element.of("h1", "Preview: " + understood.workup().id()),
        section(
            "not-understood",
            "What was not understood",
            list(kept, "Everything in the file was understood.")),
        Html.table("Results, in the program's own units", List.of("What", "Value", "Unit"), rows),
        visit.form("/import/take").with(Html.hidden("file", file), button("Begin a case with it")),
        Html.paragraph("").with(link("/cases", "Leave it")));
  }

  private ServerResponse take(PageRequest visit) {
    return begin(visit, visit.field("file"));
  }
}
