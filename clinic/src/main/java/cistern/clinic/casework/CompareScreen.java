package cistern.clinic.casework;

import static cistern.clinic.web.Html.note;

import cistern.clinic.account.Permission;
import cistern.clinic.setting.Setting;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.followup.Comparison;
import cistern.interpretation.Caution;
import cistern.interpretation.Interpretation;
import cistern.report.compare.ComparisonPaper;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.paper.PaperPage;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/** All punctures of the same person, compared. */
public final class CompareScreen {

  private final CaseContext context;
  private final CaseFrame frame;

  private CompareScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  /** The comparison of a case with the person's other punctures. */
  public static CompareScreen of(CaseContext context) {
    return new CompareScreen(context);
  }

  /** Its route. */
  public List<Route> routes() {
    return List.of(Route.get("/cases/{id}/compare", Permission.READ_REPORT, this::page));
  }

  private ServerResponse page(PageRequest visit) {
    return context
        .open(visit)
        .map(open -> Responses.page(frame.toHtml(visit, open, "compare", content(visit, open))))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private Node content(PageRequest visit, OpenCase open) {
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
    Optional<String> refusal = context.medicine().repeats().refusal(punctures);
    return refusal.isPresent() ? note("trouble", refusal.get()) : compared(punctures);
  }

  private Node compared(List<Interpretation> punctures) {
    Comparison comparison = context.medicine().repeats().compare(punctures);
    boolean isInvented = punctures.stream().anyMatch(i -> i.workup().remarks().isInvented());
    List<String> remarks = isInvented ? List.of(Caution.INVENTED.text()) : List.of();
    return InterpretationScreen.inside(
        PaperPage.toBody(
            ComparisonPaper.of(
                comparison, context.medicine().facts(), remarks, context.medicine().madeBy())));
  }

  /** The person's punctures; each of them is read, and the trail says so. */
  private List<Interpretation> of(PageRequest visit, String person) {
    // Who compares must not miss a puncture because it is not read yet.
    if (context.summaries().bring(Duration.ofMillis(Setting.STORE_BUSY.number())) > 0) {
      throw new IllegalStateException("cases are still being read");
    }
    return new Punctures(context, visit).of(person).stream().map(OpenCase::interpretation).toList();
  }
}
