package cistern.clinic.casework;

import static cistern.clinic.web.Html.note;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.standing.OpenCase;
import cistern.clinic.standing.UnreadableCase;
import cistern.clinic.web.Answers;
import cistern.clinic.web.Route;
import cistern.clinic.web.Visit;
import cistern.followup.Comparison;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.report.compare.ComparisonPaper;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.paper.PaperPage;
import java.util.List;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/** All punctures of the same person, compared. */
public final class CompareScreen {

  private final Desk desk;
  private final CaseFrame frame;

  private CompareScreen(Desk desk) {
    this.desk = desk;
    this.frame = new CaseFrame(desk);
  }

  /** The comparison of a case with the person's other punctures. */
  public static CompareScreen of(Desk desk) {
    return new CompareScreen(desk);
  }

  /** Its route. */
  public List<Route> routes() {
    return List.of(Route.get("/cases/{id}/compare", Permission.READ_REPORT, this::page));
  }

  private ServerResponse page(Visit visit) {
    return desk.open(visit)
        .map(open -> Answers.page(frame.toHtml(visit, open, "compare", content(visit, open))))
        .orElseGet(() -> desk.troubles().missing(visit));
  }

  private Node content(Visit visit, OpenCase open) {
    Optional<String> person = open.workup().panel().person().id();
    List<Interpretation> punctures = person.map(p -> of(visit, p)).orElse(List.of());
    if (punctures.size() < 2) {
      return cistern.report.markup.Fragment.of(
          Element.of("h1", "Earlier punctures"),
          note(
              "empty",
              person.isEmpty()
                  ? "The person has no identifier in this case: give it under “Question and"
                      + " evidence”, and the person's other punctures are compared here."
                  : "No other puncture of this person is known here."));
    }
    Optional<String> refusal = desk.medicine().repeats().refusal(punctures);
    return refusal.isPresent() ? note("trouble", refusal.get()) : compared(punctures);
  }

  private Node compared(List<Interpretation> punctures) {
    Comparison comparison = desk.medicine().repeats().compare(punctures);
    boolean isInvented = punctures.stream().anyMatch(i -> i.workup().remarks().isInvented());
    List<String> remarks = isInvented ? List.of(Caution.INVENTED.text()) : List.of();
    return SaysScreen.inside(
        PaperPage.toBody(ComparisonPaper.of(comparison, remarks, desk.medicine().madeBy())));
  }

  /** The person's punctures with a name each; each of them is read, and the trail says so. */
  private List<Interpretation> of(Visit visit, String person) {
    return desk.cases().holding(visit.account().id(), person).stream()
        .filter(version -> isOf(version, person))
        .flatMap(version -> desk.cases().read(version.caseId(), visit.account().id()).stream())
        .flatMap(version -> interpretation(version).stream())
        .toList();
  }

  private boolean isOf(CaseVersion version, String person) {
    return interpretation(version)
        .filter(i -> i.workup().panel().person().id().filter(person::equals).isPresent())
        .isPresent();
  }

  /** What a case says; one that the rules in force reject is compared with nothing. */
  private Optional<Interpretation> interpretation(CaseVersion version) {
    try {
      return Optional.of(desk.recent().open(version).interpretation());
    } catch (UnreadableCase e) {
      return Optional.empty();
    }
  }
}
