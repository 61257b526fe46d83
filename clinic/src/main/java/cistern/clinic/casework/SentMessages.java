package cistern.clinic.casework;

import cistern.clinic.cases.CaseVersion;
import cistern.clinic.cases.SignedReport;
import cistern.clinic.status.OpenCase;
import cistern.clinic.web.Responses;
import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.finding.Finding;
import cistern.statement.Statement;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.web.servlet.function.ServerResponse;

/** A signed report as charts and other systems take it in, with the signed PDF attached. */
final class SentMessages {

  private final CaseContext context;

  SentMessages(CaseContext context) {
    this.context = context;
  }

  ServerResponse fhir(SignedReport report) {
    return Responses.file(
        "application/fhir+json",
        FileNames.of(report, "fhir.json"),
        FhirWriter.write(sent(report)).getBytes(StandardCharsets.UTF_8));
  }

  ServerResponse hl7(SignedReport report) {
    return Responses.file(
        "application/hl7-v2",
        FileNames.of(report, "message.hl7"),
        Hl7Writer.write(sent(report)).getBytes(StandardCharsets.UTF_8));
  }

  private SentReport sent(SignedReport report) {
    CaseVersion frozen =
        new CaseVersion(
            report.caseId(),
            report.caseVersion(),
            report.at(),
            report.account(),
            "",
            report.content().workup());
    OpenCase open = OpenCase.of(frozen, context.medicine());
    List<SentFinding> findings =
        open.interpretation().findings().all().stream()
            .filter(Finding::isAsked)
            .map(finding -> SentFinding.of(finding, context.medicine().facts()))
            .toList();
    List<String> urgent =
        open.interpretation().alerts().urgent().holding().stream()
            .map(urgency -> urgency.words().say())
            .toList();
    List<String> statements =
        open.interpretation().statements().stream()
            .map(Statement::text)
            .filter(text -> !urgent.contains(text))
            .toList();
    return new SentReport(
        new SentWorkup(open.file(), context.medicine().facts()),
        findings,
        statements,
        urgent,
        new Versions(context.medicine().software(), open.interpretation().factsVersion()),
        Optional.of(report.content().pdf()));
  }
}
