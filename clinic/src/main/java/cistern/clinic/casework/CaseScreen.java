package cistern.clinic.casework;

import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.form.CaseStep;
import cistern.clinic.form.Typing;
import cistern.clinic.status.CaseNames;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.Duty;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.Json;
import cistern.exchange.json.JsonText;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.urgent.Urgency;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import org.springframework.web.servlet.function.ServerResponse;

/** One case: the answer, what is missing, what waits, and every version. */
public final class CaseScreen {

  /** What a file says of the person, which the next puncture finds there already. */
  private static final Set<String> OF_THE_PERSON =
      Set.of(
          "workup",
          "invented",
          "question",
          "laboratory",
          "clinician",
          "person",
          "evidence",
          "context",
          "serology",
          "treatments");

  private final CaseContext context;
  private final CaseFrame frame;

  private CaseScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  /** The screen of a case. */
  public static CaseScreen of(CaseContext context) {
    return new CaseScreen(context);
  }

  /** Its routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/cases/{id}", Permission.SEE_CASE, this::page),
        Route.get("/cases/{id}/file", Permission.READ_REPORT, this::file),
        Route.get("/cases/{id}/versions/{number}", Permission.READ_REPORT, this::oldFile),
        Route.post("/cases/{id}/versions/{number}", Permission.WORK_UP, this::takeBack),
        Route.post("/cases/{id}/again", Permission.WORK_UP, this::again),
        Route.post("/cases/{id}/undo", Permission.SEE_CASE, new Undo(context)::answer));
  }

  private ServerResponse page(PageRequest visit) {
    return context
        .open(visit)
        .map(open -> Responses.page(page(visit, open)))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private String page(PageRequest visit, OpenCase open) {
    CaseStatus status = context.status(open);
    return frame.toHtml(
        visit,
        open,
        "",
        Element.of("h1", "Where it stands"),
        open.workup()
            .remarks()
            .question()
            .<Node>map(q -> note("question", q))
            .orElseGet(() -> note("empty", "Nobody has written a question yet.")),
        new Journey(visit, open, status).rows(changes(open)),
        results(visit, open),
        whatIf(visit, open),
        closed(status),
        section(
            "missing",
            "What is missing",
            list(
                status.incomplete().stream().map(Html::text).toList(),
                "Nothing that the program knows of is missing.")),
        section(
            "waiting",
            "What waits",
            list(
                status.duties().stream().map(Duty::title).map(Html::text).toList(),
                "Nothing waits.")),
        visit.isAllowed(Permission.WORK_UP)
            ? visit
                .form("/cases/" + open.version().caseId() + "/again")
                .with(
                    Html.button("Begin another puncture of this person")
                        .with("class", "second-button"))
            : nothing(),
        section("versions", "Every version", versions(visit, open)));
  }

  /** Who changed a step last, and when, by its word. */
  private Map<String, String> changes(OpenCase open) {
    Map<String, String> changes = new TreeMap<>();
    String caseId = open.version().caseId();
    context
        .cases()
        .versions(caseId)
        .forEach(v -> changes.put(v.step(), byAndAt(v.account(), v.at())));
    context.reports().of(caseId).forEach(r -> changes.put("report", byAndAt(r.account(), r.at())));
    return changes;
  }

  private String byAndAt(String account, String at) {
    return context.accounts().fullName(account) + ", " + context.shortTime(at);
  }

  /** Other numbers, tried beside what the case says. */
  private Node whatIf(PageRequest visit, OpenCase open) {
    return visit.isAllowed(Permission.READ_REPORT)
        ? Element.of(
            "details",
            Element.of("summary", "What if: another prior, cut-off or variation"),
            new WhatIf(context, visit, open).toNode(false))
        : nothing();
  }

  /** The table of what was measured: typed where it is read, or read only. */
  private Node results(PageRequest visit, OpenCase open) {
    if (visit.isAllowed(Permission.ENTER_RESULTS)) {
      return StepScreen.of(context).toNode(visit, open, CaseStep.RESULTS);
    }
    Typing held = Typing.none(CaseStep.RESULTS, context.medicine().zone());
    Map<String, String> shown = new TreeMap<>();
    held.fields().forEach(f -> shown.put(f.key(), held.shown(f, open.file())));
    Unfolded unfolded = new Unfolded(context, visit, open, open.interpretation());
    return new PairTable(
            open.interpretation(),
            context.medicine().facts(),
            visit.isAllowed(Permission.READ_REPORT),
            sample -> text(shown.getOrDefault(sample.code(), "")),
            unfolded)
        .usual(
            new BandRow(visit, open, context.status(open), unfolded)
                .toElement(key -> Html.text(shown.getOrDefault(key, ""))));
  }

  /** The next puncture of the same person: a case with what is known of the person beside it. */
  private ServerResponse again(PageRequest visit) {
    Optional<CaseVersion> last = context.cases().read(visit.path("id"), visit.account().id());
    if (last.isEmpty()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = context.recent().open(last.get());
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    open.file()
        .members()
        .forEach(
            (name, value) -> {
              if (OF_THE_PERSON.contains(name)) {
                members.put(name, value);
              }
            });
    members.put("results", new Json.Sequence(List.of()));
    Json.Structure next =
        CaseNames.named(new Json.Structure(members), context.names().unlike(open.name()));
    CaseVersion begun = context.cases().add("begun", JsonText.of(next), visit.account().id());
    return Responses.see("/cases/" + begun.caseId());
  }

  /** Emergencies that somebody closed, with name, time and reason. */
  private Node closed(CaseStatus status) {
    List<Element> items = new ArrayList<>();
    for (Urgency urgency : status.closed()) {
      urgency
          .answered()
          .ifPresent(
              reply ->
                  items.add(
                      Element.of("span", urgency.words().say())
                          .withText(
                              " Closed by "
                                  + reply.by()
                                  + reply.at().map(at -> ", " + context.time(at)).orElse("")
                                  + ": "
                                  + reply.reason())));
    }
    return items.isEmpty()
        ? nothing()
        : section("closed", "Emergencies that were closed", list(items, ""));
  }

  private Node versions(PageRequest visit, OpenCase open) {
    long last = open.version().number();
    boolean isUndoable = visit.isAllowed(Permission.WORK_UP) && last > 1;
    List<String> head = new ArrayList<>(List.of("Version", "When", "Who", "What", "File"));
    if (isUndoable) {
      head.add("Undo");
    }
    List<List<Node>> rows =
        context.cases().versions(open.version().caseId()).reversed().stream()
            .map(version -> row(visit, version, last).subList(0, head.size()))
            .toList();
    return Html.table("The newest first", head, rows);
  }

  private List<Node> row(PageRequest visit, CaseVersion version, long last) {
    String path = "/cases/" + version.caseId() + "/versions/" + version.number();
    return List.of(
        text(Long.toString(version.number())),
        text(context.time(version.at())),
        text(context.accounts().fullName(version.account())),
        text(Undo.words(version.step())),
        visit.isAllowed(Permission.READ_REPORT)
            ? link(path, "Work-up file")
                .with("aria-label", "Work-up file of version " + version.number())
            : nothing(),
        version.number() != last
            ? visit
                .form(path)
                .with(
                    Html.button("Take back to this")
                        .with("class", "plain")
                        .with("aria-label", "Take back to version " + version.number()))
            : text("as it is now"));
  }

  /** Undoes what came after a version: its content becomes the newest version; nothing is lost. */
  private ServerResponse takeBack(PageRequest visit) {
    Optional<CaseVersion> last = context.cases().read(visit.path("id"), visit.account().id());
    Optional<CaseVersion> old =
        last.flatMap(
            v -> visit.number("number").flatMap(n -> context.cases().version(v.caseId(), n)));
    if (old.isEmpty()) {
      return context.troubles().missing(visit);
    }
    CaseVersion now = last.orElseThrow();
    String step = "taken back to version " + old.get().number();
    context
        .cases()
        .save(
            now.caseId(), new Change(now.number(), step, old.get().workup(), visit.account().id()));
    return Responses.see("/cases/" + now.caseId());
  }

  private ServerResponse file(PageRequest visit) {
    return context
        .cases()
        .read(visit.path("id"), visit.account().id())
        .map(CaseScreen::file)
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private ServerResponse oldFile(PageRequest visit) {
    Optional<CaseVersion> read = context.cases().read(visit.path("id"), visit.account().id());
    return read.flatMap(
            v -> visit.number("number").flatMap(n -> context.cases().version(v.caseId(), n)))
        .map(CaseScreen::file)
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private static ServerResponse file(CaseVersion version) {
    return Responses.file(
        "application/json",
        "workup-" + version.caseId() + "-" + version.number() + ".json",
        version.workup().getBytes(StandardCharsets.UTF_8));
  }
}
