package cistern.clinic.casework;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.paragraph;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Saving;
import cistern.clinic.cases.SignedReport;
import cistern.clinic.status.UnreadableCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.clinic.web.Screen;
import cistern.exchange.json.InputProblem;
import cistern.exchange.workup.WorkupReading;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * A case that the rules in force reject: why, its file as it is kept, what was signed, and a way to
 * make it readable again with a new version.
 */
public final class UnreadableScreen {

  private static final String FILE = "file";
  private static final String FAULT =
      "The program has a fault with something in this file. Tell the person who runs the program;"
          + " until it is mended, put right below what looks unusual.";

  private final CaseContext context;

  private UnreadableScreen(CaseContext context) {
    this.context = context;
  }

  /** The screen of a context. */
  public static UnreadableScreen of(CaseContext context) {
    return new UnreadableScreen(context);
  }

  /** Its route: a file that was put right becomes the newest version. */
  public List<Route> routes() {
    return List.of(Route.post("/cases/{id}/file", Permission.WORK_UP, this::mend));
  }

  /** The routes of other screens, with this screen in their place where a case is unreadable. */
  public List<Route> around(List<Route> others) {
    return others.stream().map(r -> r.withScreen(v -> answer(r.screen(), v))).toList();
  }

  private ServerResponse answer(Screen screen, PageRequest visit) {
    try {
      return screen.answer(visit);
    } catch (UnreadableCase why) {
      if (why.getCause() != null) {
        context.troubles().log(why);
      }
      return page(visit, why.version(), why.version().workup(), why.problems());
    }
  }

  private ServerResponse page(
      PageRequest visit, CaseVersion version, String typed, List<InputProblem> problems) {
    boolean mayRead = visit.isAllowed(Permission.READ_REPORT);
    return Responses.page(
        HttpStatus.OK,
        context
            .frame()
            .toHtml(
                visit,
                "Not readable",
                Element.of("h1", "This case cannot be read under the rules in force"),
                paragraph(
                    "It was valid when version "
                        + version.number()
                        + " was kept; this program or its policy now rejects it. Nothing is lost:"
                        + " the file is as it was. Every other case is read as before."),
                division(
                    "trouble", list(problems.stream().map(p -> text(p.toText())).toList(), FAULT)),
                mayRead ? reports(version) : nothing(),
                mayRead ? file(visit, version, typed) : nothing()));
  }

  private Node reports(CaseVersion version) {
    String path = "/cases/" + version.caseId();
    return section(
        "signed",
        "What stays readable",
        Html.list(
            context.reports().of(version.caseId()).stream()
                .map(SignedReport::number)
                .map(n -> link(path + "/report/" + n, "Report " + n))
                .toList(),
            "Nothing is signed."),
        paragraph("").with(link(path + "/file", "The file")));
  }

  private static Node file(PageRequest visit, CaseVersion version, String typed) {
    boolean mayMend = visit.isAllowed(Permission.WORK_UP);
    Element content = Html.area(FILE, typed).with("spellcheck", "false");
    return section(
        "kept",
        "The file as it is kept",
        mayMend
            ? visit
                .form("/cases/" + version.caseId() + "/file")
                .with(field("Put it right here", content), button("Save as the next version"))
            : Element.of("pre", version.workup()));
  }

  private ServerResponse mend(PageRequest visit) {
    Optional<CaseVersion> found = context.cases().read(visit.path("id"), visit.account().id());
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    CaseVersion last = found.get();
    String file = visit.field(FILE);
    return switch (context.medicine().read(file)) {
      case WorkupReading.NotValid notValid -> page(visit, last, file, notValid.problems());
      case WorkupReading.Understood understood -> keep(visit, last, file);
    };
  }

  private ServerResponse keep(PageRequest visit, CaseVersion last, String file) {
    Change change = new Change(last.number(), "put right", file, visit.account().id());
    return switch (context.cases().save(last.caseId(), change)) {
      case Saving.Kept kept -> Responses.see("/cases/" + last.caseId());
      case Saving.Collided collided -> mend(visit);
    };
  }
}
