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
import cistern.clinic.standing.UnreadableCase;
import cistern.clinic.web.Answers;
import cistern.clinic.web.Html;
import cistern.clinic.web.Route;
import cistern.clinic.web.Visit;
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

  private final Desk desk;

  private UnreadableScreen(Desk desk) {
    this.desk = desk;
  }

  /** The screen of a desk. */
  public static UnreadableScreen of(Desk desk) {
    return new UnreadableScreen(desk);
  }

  /** Its route: a file that was put right becomes the newest version. */
  public List<Route> routes() {
    return List.of(Route.post("/cases/{id}/file", Permission.WORK_UP, this::mend));
  }

  /** The screen in place of any other of the case. */
  static ServerResponse instead(Desk desk, Visit visit, UnreadableCase why) {
    return new UnreadableScreen(desk)
        .page(visit, why.version(), why.version().workup(), why.problems());
  }

  private ServerResponse page(
      Visit visit, CaseVersion version, String typed, List<InputProblem> problems) {
    boolean mayRead = visit.isAllowed(Permission.READ_REPORT);
    return Answers.page(
        HttpStatus.OK,
        desk.frame()
            .toHtml(
                visit,
                "Not readable",
                Element.of("h1", "This case cannot be read under the rules in force"),
                paragraph(
                    "It was valid when version "
                        + version.number()
                        + " was kept; this program or its policy now rejects it. Nothing is lost:"
                        + " the file is as it was."),
                division(
                    "trouble", list(problems.stream().map(p -> text(p.toText())).toList(), "")),
                mayRead ? reports(version) : nothing(),
                mayRead ? file(visit, version, typed) : nothing()));
  }

  private Node reports(CaseVersion version) {
    String path = "/cases/" + version.caseId();
    return section(
        "signed",
        "What stays readable",
        Html.list(
            desk.reports().of(version.caseId()).stream()
                .map(SignedReport::number)
                .map(n -> link(path + "/report/" + n, "Report " + n))
                .toList(),
            "Nothing is signed."),
        paragraph("").with(link(path + "/file", "The file")));
  }

  private static Node file(Visit visit, CaseVersion version, String typed) {
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

  private ServerResponse mend(Visit visit) {
    Optional<CaseVersion> found = desk.cases().read(visit.path("id"), visit.account().id());
    if (found.isEmpty()) {
      return desk.troubles().missing(visit);
    }
    CaseVersion last = found.get();
    String file = visit.field(FILE);
    return switch (desk.medicine().read(file)) {
      case WorkupReading.NotValid notValid -> page(visit, last, file, notValid.problems());
      case WorkupReading.Understood understood -> keep(visit, last, file);
    };
  }

  private ServerResponse keep(Visit visit, CaseVersion last, String file) {
    Change change = new Change(last.number(), "put right", file, visit.account().id());
    return switch (desk.cases().save(last.caseId(), change)) {
      case Saving.Kept kept -> Answers.see("/cases/" + last.caseId());
      case Saving.Collided collided -> mend(visit);
    };
  }
}
