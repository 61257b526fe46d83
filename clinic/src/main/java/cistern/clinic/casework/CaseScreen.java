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
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.Duty;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.statement.Statement;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/** One case: the answer, what is missing, what waits, and every version. */
public final class CaseScreen {

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
    List<Statement> said = open.interpretation().statements();
    Node answer =
        visit.isAllowed(Permission.READ_REPORT) && !said.isEmpty()
            ? note("answer", said.getFirst().text())
            : nothing();
    return frame.toHtml(
        visit,
        open,
        "",
        Element.of("h1", open.name()),
        open.workup()
            .remarks()
            .question()
            .<Node>map(q -> note("question", q))
            .orElseGet(() -> note("empty", "Nobody has written a question yet.")),
        answer,
        section(
            "missing",
            "What is missing",
            list(status.missing().stream().map(Html::text).toList(), "Nothing is missing.")),
        section(
            "waiting",
            "What waits",
            list(
                status.duties().stream().map(Duty::title).map(Html::text).toList(),
                "Nothing waits.")),
        section("versions", "Every version", versions(visit, open)));
  }

  private Node versions(PageRequest visit, OpenCase open) {
    List<List<Node>> rows =
        context.cases().versions(open.version().caseId()).reversed().stream()
            .map(version -> row(visit, version, open.version().number()))
            .toList();
    return Html.table(
        "The newest first", List.of("Version", "When", "Who", "What", "File", "Undo"), rows);
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
        visit.isAllowed(Permission.WORK_UP) && version.number() != last
            ? visit
                .form(path)
                .with(
                    Html.button("Take back to this")
                        .with("class", "plain")
                        .with("aria-label", "Take back to version " + version.number()))
            : nothing());
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
