package cistern.clinic.casework;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.report.markup.Element;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.springframework.web.servlet.function.ServerResponse;

/**
 * What a case would say with other numbers. It writes nothing, not even that it was asked: it
 * answers whoever the trail already names as a reader of the case as it stands.
 */
public final class WhatIfScreen {

  private final CaseContext context;
  private final CaseFrame frame;

  private WhatIfScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  /** The screen of a context. */
  public static WhatIfScreen of(CaseContext context) {
    return new WhatIfScreen(context);
  }

  /** Its routes. */
  public List<Route> routes() {
    String path = "/cases/{id}/what-if";
    return List.of(
        Route.post(path, Permission.READ_REPORT, v -> answer(v, this::page)),
        Route.post(
            path + "/look",
            Permission.READ_REPORT,
            v -> answer(v, (visit, open) -> new WhatIf(context, visit, open).said().toText())));
  }

  private ServerResponse answer(PageRequest visit, BiFunction<PageRequest, OpenCase, String> page) {
    Optional<CaseVersion> version = context.cases().find(visit.path("id"));
    if (version.isEmpty()) {
      return context.troubles().missing(visit);
    }
    return context.cases().isRead(version.get(), visit.account().id())
        ? Responses.page(page.apply(visit, context.recent().open(version.get())))
        : Responses.see("/cases/" + version.get().caseId());
  }

  private String page(PageRequest visit, OpenCase open) {
    return frame.toHtml(
        visit,
        open,
        "",
        Element.of("h1", "What if"),
        new WhatIf(context, visit, open).toNode(true));
  }
}
