package cistern.clinic.casework;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.division;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;
import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.list;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Reports.Signing;
import cistern.clinic.cases.SignedReport;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.pdf.PdfDocument;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.function.ServerResponse;

/** Signing a case, amending what was signed, and everything that goes to paper. */
public final class ReportScreen {

  private static final String PDF = "application/pdf";
  private static final String JSON = "application/json";

  private final CaseContext context;
  private final CaseFrame frame;

  private ReportScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
  }

  /** The screen of a case's reports. */
  public static ReportScreen of(CaseContext context) {
    return new ReportScreen(context);
  }

  /** Its routes. */
  public List<Route> routes() {
    String signed = "/cases/{id}/report/{number}";
    return List.of(
        Route.get("/cases/{id}/report", Permission.READ_REPORT, this::page),
        Route.post("/cases/{id}/report", Permission.SIGN, this::sign),
        Route.get(signed, Permission.READ_REPORT, v -> signed(v, ReportScreen::page)),
        Route.get(signed + "/pdf", Permission.READ_REPORT, v -> signed(v, ReportScreen::pdf)),
        Route.get(signed + "/policy", Permission.READ_REPORT, v -> signed(v, r -> policy(r, v))),
        Route.get(signed + "/file", Permission.READ_REPORT, v -> signed(v, ReportScreen::file)),
        Route.get(
            signed + "/letter",
            Permission.READ_REPORT,
            v -> signed(v, r -> paper(r, Audience.REFERRER))),
        Route.get(
            signed + "/patient",
            Permission.READ_REPORT,
            v -> signed(v, r -> paper(r, Audience.PATIENT))));
  }

  private ServerResponse page(PageRequest visit) {
    return context
        .open(visit)
        .map(open -> Responses.page(html(visit, open, nothing())))
        .orElseGet(() -> context.troubles().missing(visit));
  }

  private String html(PageRequest visit, OpenCase open, Node said) {
    List<SignedReport> reports = context.reports().of(open.version().caseId());
    return frame.toHtml(
        visit,
        open,
        "report",
        Element.of("h1", "Report"),
        said,
        visit.isAllowed(Permission.SIGN) ? form(visit, open, reports) : nothing(),
        section(
            "signed",
            "Signed",
            reports.isEmpty() ? note("empty", "Nothing is signed yet.") : table(reports)));
  }

  /** What must be answered first stands beside the button: a signature does not answer it. */
  private static Node unanswered(OpenCase open) {
    List<Node> lines =
        open.interpretation().alerts().urgent().open().stream()
            .map(urgency -> text(urgency.words().say()))
            .toList();
    return lines.isEmpty()
        ? nothing()
        : division("trouble", Html.paragraph("Nobody has answered yet:"), list(lines, ""));
  }

  private Node form(PageRequest visit, OpenCase open, List<SignedReport> reports) {
    String madeBy = context.medicine().madeBy();
    CaseVersion version = open.version();
    boolean isAmendment = !reports.isEmpty();
    String what =
        "You sign version "
            + version.number()
            + " as it stands under “What it says”: inputs, program, facts, policy and text are"
            + " frozen with a hash. "
            + madeBy
            + ".";
    return visit
        .form("/cases/" + version.caseId() + "/report")
        .with(
            Element.of("h2", isAmendment ? "Amend" : "Sign"),
            Html.paragraph(what),
            Html.paragraph("")
                .with(link("/cases/" + version.caseId() + "/says", "Read what you sign")),
            Element.of("input")
                .with("type", "hidden")
                .with("name", "version")
                .with("value", Long.toString(version.number())),
            isAmendment
                ? field("Why it is amended", input("reason", "").with("autocomplete", "off"))
                : nothing(),
            unanswered(open),
            button(
                (isAmendment ? "Sign the amendment as " : "Sign as ")
                    + visit.account().fullName()));
  }

  private Node table(List<SignedReport> reports) {
    List<List<Node>> rows = reports.reversed().stream().map(this::row).toList();
    return Html.table(
        "The newest first; the old stay readable",
        List.of("Report", "Signed", "By", "Of version", "Why amended", "Made with", "Hash", "Open"),
        rows);
  }

  private List<Node> row(SignedReport report) {
    String path = "/cases/" + report.caseId() + "/report/" + report.number();
    String number = " of report " + report.number();
    return List.of(
        text(Long.toString(report.number())),
        text(context.time(report.at())),
        text(context.accounts().fullName(report.account())),
        text(Long.toString(report.caseVersion())),
        text(report.reason()),
        text(report.content().madeBy()),
        Element.of("code", report.hash()).with("class", "hash"),
        Html.division(
            "actions",
            link(path, "Read").with("aria-label", "Read" + number),
            link(path + "/pdf", "PDF").with("aria-label", "PDF" + number),
            link(path + "/letter", "Letter").with("aria-label", "Letter" + number),
            link(path + "/patient", "For the patient")
                .with("aria-label", "Patient's page" + number),
            link(path + "/file", "Work-up file").with("aria-label", "Work-up file" + number),
            policy(report).isEmpty()
                ? nothing()
                : link(path + "/policy", "Policy").with("aria-label", "Policy" + number)));
  }

  private ServerResponse sign(PageRequest visit) {
    Optional<OpenCase> found = context.open(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = found.get();
    boolean isSame = visit.field("version").equals(Long.toString(open.version().number()));
    Signing signing =
        isSame
            ? context
                .reports()
                .sign(
                    open.version(),
                    new SignedContent(context, visit, open).toContent(),
                    visit.field("reason"),
                    visit.account().id())
            : new Signing.Refused(cistern.clinic.cases.Reports.NotSigned.CHANGED);
    return switch (signing) {
      case Signing.Signed signed -> Responses.see("/cases/" + open.version().caseId() + "/report");
      case Signing.Refused refused ->
          Responses.page(
              HttpStatus.CONFLICT,
              html(visit, open, note("trouble", refused.reason().text()).with("role", "alert")));
    };
  }

  private ServerResponse signed(PageRequest visit, Function<SignedReport, ServerResponse> screen) {
    return visit
        .number("number")
        .flatMap(n -> context.reports().read(visit.path("id"), n, visit.account().id()))
        .map(screen)
        .orElseGet(() -> context.troubles().missing(visit));
  }

  /** The page as it was signed: it needs its own style sheet and nothing else. */
  private static ServerResponse page(SignedReport report) {
    return ServerResponse.ok()
        .header(
            "Content-Security-Policy",
            "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri"
                + " 'none'; form-action 'none'")
        .contentType(new org.springframework.http.MediaType("text", "html", StandardCharsets.UTF_8))
        .body(report.content().page());
  }

  private static ServerResponse pdf(SignedReport report) {
    return Responses.file(PDF, name(report, "report.pdf"), report.content().pdf());
  }

  private static ServerResponse file(SignedReport report) {
    return Responses.file(
        JSON,
        name(report, "workup.json"),
        report.content().workup().getBytes(StandardCharsets.UTF_8));
  }

  /**
   * The letter and the patient's page as they were frozen. Of a report that was signed before the
   * program froze them, they are written from what was signed, under the rules in force now.
   */
  private ServerResponse paper(SignedReport report, Audience audience) {
    byte[] pdf =
        report
            .content()
            .papers()
            .map(p -> audience == Audience.PATIENT ? p.patient() : p.letter())
            .orElseGet(() -> written(report, audience));
    return Responses.file(PDF, name(report, audience.word() + ".pdf"), pdf);
  }

  private byte[] written(SignedReport report, Audience audience) {
    CaseVersion frozen =
        new CaseVersion(
            report.caseId(),
            report.caseVersion(),
            report.at(),
            report.account(),
            "",
            report.content().workup());
    Page page =
        Page.of(context.medicine().software(), context.medicine().facts())
            .withSignature(
                "Signed by %s on %s."
                    .formatted(
                        context.accounts().fullName(report.account()), context.time(report.at())));
    return PdfDocument.of(context.medicine().software(), context.medicine().facts())
        .write(
            page.toPaper(OpenCase.of(frozen, context.medicine()).interpretation(), audience),
            List.of());
  }

  private ServerResponse policy(SignedReport report, PageRequest visit) {
    String policy = policy(report);
    return policy.isEmpty()
        ? context.troubles().missing(visit)
        : Responses.file(
            JSON, name(report, "policy.json"), policy.getBytes(StandardCharsets.UTF_8));
  }

  private static String policy(SignedReport report) {
    return report.content().papers().map(SignedReport.Papers::policy).orElse("");
  }

  private static String name(SignedReport report, String kind) {
    return report.caseId() + "-" + report.number() + "-" + kind;
  }
}
