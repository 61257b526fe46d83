package cistern.clinic.casework;

import static cistern.clinic.web.Html.division;

import cistern.clinic.account.Permission;
import cistern.clinic.status.CaseStatus;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.finding.Finding;
import cistern.puncture.PuncturePlan;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.paper.PaperPage;
import cistern.report.plan.PlanPaper;
import cistern.report.plan.TubePaper;
import cistern.report.wording.PrintedTime;
import java.util.List;
import java.util.function.BiFunction;
import org.springframework.web.servlet.function.ServerResponse;

/** What a case says: the report as it would be signed, every value with its why; and the plan. */
public final class InterpretationScreen {

  private final CaseContext context;
  private final CaseFrame frame;

  private InterpretationScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  /** The screens of what a case says. */
  public static InterpretationScreen of(CaseContext context) {
    return new InterpretationScreen(context);
  }

  /** Their routes. */
  public List<Route> routes() {
    return List.of(
        Route.get("/cases/{id}/says", Permission.READ_REPORT, v -> page(v, this::says)),
        Route.get("/cases/{id}/tubes", Permission.READ_REPORT, v -> page(v, this::plan)),
        Route.get("/cases/{id}/labels", Permission.READ_REPORT, v -> page(v, this::labels)));
  }

  private ServerResponse page(PageRequest visit, BiFunction<PageRequest, OpenCase, String> screen) {
    return context
        .open(visit)
        .map(open -> Responses.page(screen.apply(visit, open)))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private String says(PageRequest visit, OpenCase open) {
    Element body =
        Page.of(context.medicine().software(), context.medicine().facts())
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

  private String plan(PageRequest visit, OpenCase open) {
    CaseStatus status = context.status(open);
    Element body =
        PaperPage.toBody(
            PlanPaper.of(
                open.workup(),
                status.plan(),
                PrintedTime.of(context.medicine().facts()),
                context.medicine().madeBy()));
    return frame.toHtml(visit, open, "tubes", inside(body));
  }

  private String labels(PageRequest visit, OpenCase open) {
    PuncturePlan plan = context.status(open).plan();
    Element body =
        PaperPage.toBody(
            TubePaper.of(
                open.workup(), plan, context.medicine().facts(), context.medicine().madeBy()));
    return frame.toHtml(visit, open, "labels", inside(body));
  }

  /** The body of a page, to stand inside the body of this one. */
  public static Element inside(Element main) {
    String own = main.attributes().getOrDefault("class", "");
    return division(("inside " + own).strip()).with(main.children());
  }
}
