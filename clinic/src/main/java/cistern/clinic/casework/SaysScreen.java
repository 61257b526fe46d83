package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;

import cistern.clinic.account.Permission;
import cistern.clinic.standing.OpenCase;
import cistern.clinic.standing.Standing;
import cistern.clinic.web.Answers;
import cistern.clinic.web.Route;
import cistern.clinic.web.Visit;
import cistern.finding.Finding;
import cistern.puncture.PuncturePlan;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.paper.PaperPage;
import cistern.report.plan.PlanPaper;
import cistern.report.plan.TubePaper;
import java.util.List;
import java.util.function.BiFunction;
import org.springframework.web.servlet.function.ServerResponse;

/** What a case says: the report as it would be signed, every value with its why; and the plan. */
public final class SaysScreen {

  private final Desk desk;
  private final CaseFrame frame;

  private SaysScreen(Desk desk) {
    this.desk = desk;
    this.frame = new CaseFrame(desk);
  }

  /** The screens of what a case says. */
  public static SaysScreen of(Desk desk) {
    return new SaysScreen(desk);
  }

  /** Their routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/cases/{id}/says", Permission.READ_REPORT, v -> page(v, this::says)),
        Route.get("/cases/{id}/tubes", Permission.READ_REPORT, v -> page(v, this::plan)),
        Route.get("/cases/{id}/labels", Permission.READ_REPORT, v -> page(v, this::labels)));
  }

  private ServerResponse page(Visit visit, BiFunction<Visit, OpenCase, String> screen) {
    return desk.open(visit)
        .map(open -> Answers.page(screen.apply(visit, open)))
        .orElseGet(() -> desk.troubles().missing(visit));
  }

  private String says(Visit visit, OpenCase open) {
    Element body =
        Page.of(desk.medicine().software(), desk.medicine().facts())
            .toBody(open.interpretation(), Audience.CLINICIAN);
    List<Finding> asked =
        open.interpretation().findings().all().stream().filter(Finding::isAsked).toList();
    Node why =
        cistern.clinic.web.Html.section(
            "why",
            "Why: every value with its formula",
            division("whys")
                .with(asked.stream().map(f -> Why.of(f, open.interpretation())).toList()));
    Element linked = division("inside").with(WhyLinks.of(body.children()));
    return frame.toHtml(visit, open, "says", linked, why);
  }

  private String plan(Visit visit, OpenCase open) {
    Standing standing = desk.standing(open);
    Element body =
        PaperPage.toBody(PlanPaper.of(open.workup(), standing.plan(), desk.medicine().madeBy()));
    return frame.toHtml(visit, open, "tubes", inside(body));
  }

  private String labels(Visit visit, OpenCase open) {
    PuncturePlan plan = desk.standing(open).plan();
    Element body = PaperPage.toBody(TubePaper.of(open.workup(), plan, desk.medicine().madeBy()));
    return frame.toHtml(visit, open, "labels", inside(body));
  }

  /** The body of a page, to stand inside the body of this one. */
  static Element inside(Element main) {
    String own = main.attributes().getOrDefault("class", "");
    return division(("inside " + own).strip()).with(main.children());
  }
}
