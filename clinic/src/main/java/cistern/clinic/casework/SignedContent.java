package cistern.clinic.casework;

import cistern.clinic.cases.SignedReport;
import cistern.clinic.status.Medicine;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.PageRequest;
import cistern.interpretation.Interpretation;
import cistern.report.chart.ChartComment;
import cistern.report.page.Audience;
import cistern.report.page.Page;
import cistern.report.pdf.Attachment;
import cistern.report.pdf.PdfDocument;
import cistern.report.wording.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Everything that a signature freezes, written under the rules that are in force when it is. */
final class SignedContent {

  private static final String JSON = "application/json";

  private final CaseContext context;
  private final PageRequest visit;
  private final OpenCase open;

  SignedContent(CaseContext context, PageRequest visit, OpenCase open) {
    this.context = context;
    this.visit = visit;
    this.open = open;
  }

  SignedReport.Content toContent() {
    Medicine medicine = context.medicine();
    Interpretation said = open.interpretation();
    Page page = Page.of(medicine.software(), medicine.facts()).withSignature(signature());
    PdfDocument paper = PdfDocument.of(medicine.software(), medicine.facts());
    return new SignedReport.Content(
        medicine.madeBy(),
        open.version().workup(),
        page.toHtml(said, Audience.CLINICIAN),
        paper.write(page.toPaper(said, Audience.CLINICIAN), attachments()),
        Optional.of(
            new SignedReport.Papers(
                medicine.rules().policy(),
                paper.write(page.toPaper(said, Audience.REFERRER), List.of()),
                paper.write(page.toPaper(said, Audience.PATIENT), List.of()),
                ChartComment.of(said, PrintedTime.of(medicine.facts())))));
  }

  /** The inputs, and the policy that changed the facts. */
  private List<Attachment> attachments() {
    String policy = context.medicine().rules().policy();
    List<Attachment> all = new ArrayList<>();
    all.add(
        source("workup.json", "the work-up that this page was made from", open.version().workup()));
    if (!policy.isEmpty()) {
      all.add(source("policy.json", "the local policy that changed facts", policy));
    }
    return all;
  }

  private static Attachment source(String name, String what, String content) {
    return new Attachment(name, JSON, what, Attachment.Relation.SOURCE, content);
  }

  /** Who signs, when and what; an amendment says why it replaces the report before. */
  private String signature() {
    int number = context.reports().of(open.version().caseId()).size() + 1;
    String kind =
        number == 1
            ? "Report"
            : "Amendment (" + visit.field("reason") + "), report " + number + ",";
    return "%s signed by %s on %s, of version %d of the case."
        .formatted(
            kind,
            visit.account().fullName(),
            context.time(context.medicine().clock().instant().toString()),
            open.version().number());
  }
}
