package cistern.clinic.casework;

import static cistern.clinic.web.Html.link;
import static cistern.clinic.web.Html.note;
import static cistern.clinic.web.Html.nothing;
import static cistern.clinic.web.Html.section;
import static cistern.clinic.web.Html.text;

import cistern.clinic.account.Permission;
import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.Cases.Change;
import cistern.clinic.cases.Reports.NotSigned;
import cistern.clinic.cases.Reports.Signing;
import cistern.clinic.cases.Saving;
import cistern.clinic.cases.SignedReport;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Html;
import cistern.clinic.web.PageRequest;
import cistern.clinic.web.Responses;
import cistern.clinic.web.Route;
import cistern.exchange.json.JsonText;
import cistern.exchange.workup.WorkupReading;
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
  private final SentMessages messages;

  private ReportScreen(CaseContext context) {
    this.context = context;
    this.frame = new CaseFrame(context);
    this.messages = new SentMessages(context);
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
        Route.post("/cases/{id}/report/look", Permission.SIGN, this::look),
        Route.get(signed + "/fhir", Permission.READ_REPORT, v -> signed(v, messages::fhir)),
        Route.get(signed + "/hl7", Permission.READ_REPORT, v -> signed(v, messages::hl7)),
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
    LetterFields letter = LetterFields.of(open.file());
    return frame.toHtml(
        visit,
        open,
        "report",
        Element.of("h1", "Sign what you see"),
        said,
        standing(open, reports),
        reports.isEmpty() ? nothing() : done(reports.getLast()),
        new SigningForm(context, visit, open, letter)
            .toNode(open.interpretation(), !reports.isEmpty()),
        Html.paragraph("")
            .with(
                link(
                    "/cases/" + open.version().caseId() + "/says",
                    "The whole report with every number and its why")),
        section(
            "signed",
            "Every signed report",
            reports.isEmpty() ? note("empty", "Nothing is signed yet.") : table(reports)));
  }

  /** Signed says signed, by whom and when. */
  private Node standing(OpenCase open, List<SignedReport> reports) {
    if (reports.isEmpty()) {
      return note("standing", "Not signed.");
    }
    SignedReport last = reports.getLast();
    String by =
        "Signed by "
            + context.accounts().fullName(last.account())
            + " on "
            + context.time(last.at())
            + ", report "
            + last.number()
            + ".";
    boolean isChanged = last.caseVersion() != open.version().number();
    boolean isSameRule = last.content().madeBy().equals(context.medicine().madeBy());
    return note(
        "standing",
        by
            + (isChanged
                ? " The case was changed since: what stands below is not what was signed."
                : "")
            + (isSameRule ? "" : " It stays as it was signed, under other rules than those now."));
  }

  /** What one does with a signed report: copy, open, print, send on. */
  private Node done(SignedReport report) {
    String chart = report.content().papers().map(SignedReport.Papers::chart).orElse("");
    return Html.division(
        "done signed-last",
        chart.isEmpty()
            ? nothing()
            : Html.division(
                "chart-signed",
                Html.paragraph(chart).with("id", "signed-chart"),
                SigningForm.copy("signed-chart")),
        files(report));
  }

  /** The letter as it is typed. */
  private ServerResponse look(PageRequest visit) {
    Optional<OpenCase> found = context.open(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = found.get();
    LetterFields letter = LetterFields.of(visit, open);
    SigningForm form = new SigningForm(context, visit, open, letter);
    return switch (context.medicine().read(JsonText.of(letter.in(open.file())))) {
      case WorkupReading.Understood read ->
          Responses.page(
              form.look(context.medicine().interpret(context.medicine().asOfNow(read.workup())))
                  .toText());
      case WorkupReading.NotValid notValid -> context.troubles().missing(visit);
    };
  }

  private Node table(List<SignedReport> reports) {
    List<List<Node>> rows = reports.reversed().stream().map(this::row).toList();
    return Html.table(
        "The newest first; the old stay readable",
        List.of("Report", "Signed", "By", "Of version", "Why amended", "Made with", "Hash", "Open"),
        rows);
  }

  private List<Node> row(SignedReport report) {
    return List.of(
        text(Long.toString(report.number())),
        text(context.time(report.at())),
        text(context.accounts().fullName(report.account())),
        text(Long.toString(report.caseVersion())),
        text(report.reason()),
        text(report.content().madeBy()),
        Element.of("code", report.hash()).with("class", "hash"),
        files(report));
  }

  private static Node files(SignedReport report) {
    String path = "/cases/" + report.caseId() + "/report/" + report.number();
    String number = " of report " + report.number();
    return Html.division(
        "actions",
        link(path, "Read").with("aria-label", "Read" + number),
        link(path + "/pdf", "PDF").with("aria-label", "PDF" + number),
        link(path + "/letter", "Letter").with("aria-label", "Letter" + number),
        link(path + "/patient", "For the patient").with("aria-label", "Patient's page" + number),
        link(path + "/fhir", "FHIR").with("aria-label", "FHIR bundle" + number),
        link(path + "/hl7", "HL7").with("aria-label", "HL7 message" + number),
        link(path + "/file", "Work-up file").with("aria-label", "Work-up file" + number),
        policy(report).isEmpty()
            ? nothing()
            : link(path + "/policy", "Policy").with("aria-label", "Policy" + number));
  }

  private ServerResponse sign(PageRequest visit) {
    Optional<OpenCase> found = context.open(visit);
    if (found.isEmpty()) {
      return context.troubles().missing(visit);
    }
    OpenCase open = found.get();
    LetterFields letter = LetterFields.of(visit, open);
    boolean isSame = visit.field("version").equals(Long.toString(open.version().number()));
    if (!isSame) {
      return refused(visit, open, NotSigned.CHANGED.text());
    }
    boolean isWritten = visit.fields().containsKey("seen");
    String seen = letter.seen(open.version().number(), context.medicine().madeBy());
    if (isWritten && !visit.field("seen").equals(seen)) {
      return unseen(visit, open, letter);
    }
    return letter.equals(LetterFields.of(open.file()))
        ? sign(visit, open)
        : written(open, letter, visit)
            .map(written -> sign(visit, written))
            .orElseGet(() -> refused(visit, open, NotSigned.CHANGED.text()));
  }

  /** The case with the letter's words as its next version; nothing when somebody was faster. */
  private Optional<OpenCase> written(OpenCase open, LetterFields letter, PageRequest visit) {
    Change change =
        new Change(
            open.version().number(),
            "letter",
            JsonText.of(letter.in(open.file())),
            visit.account().id());
    return context.cases().save(open.version().caseId(), change) instanceof Saving.Kept kept
        ? Optional.of(context.recent().open(kept.version()))
        : Optional.empty();
  }

  /** Nobody signs a letter that was not shown: it is kept, and shown as it will be signed. */
  private ServerResponse unseen(PageRequest visit, OpenCase open, LetterFields letter) {
    OpenCase now = written(open, letter, visit).orElse(open);
    return refused(
        visit,
        now,
        "Nothing is signed yet: the letter or a rule was changed since it was shown. Your words are"
            + " kept, and the letter stands below as it will be signed: read it, then sign.");
  }

  private ServerResponse refused(PageRequest visit, OpenCase open, String words) {
    return Responses.page(
        HttpStatus.CONFLICT, html(visit, open, note("trouble", words).with("role", "alert")));
  }

  private ServerResponse sign(PageRequest visit, OpenCase open) {
    SignedReport.Content content = new SignedContent(context, visit, open).toContent();
    if (!open.interpretation().policy().equals(context.medicine().facts().policy())) {
      return refused(visit, open, NotSigned.CHANGED.text());
    }
    Signing signing =
        context
            .reports()
            .sign(open.version(), content, visit.field("reason"), visit.account().id());
    return switch (signing) {
      case Signing.Signed signed -> Responses.see("/cases/" + open.version().caseId() + "/report");
      case Signing.Refused refused -> refused(visit, open, refused.reason().text());
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
    return Responses.file(
        PDF,
        name(report, (audience == Audience.PATIENT ? "for-the-patient" : "letter") + ".pdf"),
        pdf);
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
    return FileNames.of(report, kind);
  }
}
