package cistern.cli;

import cistern.exchange.fhir.FhirWriter;
import cistern.exchange.hl7v2.Hl7Writer;
import cistern.exchange.lab.SentFinding;
import cistern.exchange.lab.SentReport;
import cistern.exchange.lab.SentReport.Versions;
import cistern.exchange.lab.SentWorkup;
import cistern.fact.Facts;
import cistern.finding.Finding;
import cistern.interpretation.Interpretation;
import cistern.statement.Statement;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** A message for another system: a FHIR bundle, or HL7 v2. */
final class CarrierRendering implements Rendering {

  private final Carrier carrier;
  private final Facts facts;
  private final boolean hasFindings;
  private final Optional<Rendering> pdf;

  private CarrierRendering(
      Carrier carrier, Facts facts, boolean hasFindings, Optional<Rendering> pdf) {
    this.carrier = carrier;
    this.facts = facts;
    this.hasFindings = hasFindings;
    this.pdf = pdf;
  }

  /** What carries the report. */
  enum Carrier {
    FHIR,
    HL7V2
  }

  /** The results alone. */
  static CarrierRendering results(Carrier carrier, Facts facts) {
    return new CarrierRendering(carrier, facts, false, Optional.empty());
  }

  /** The results and what was made of them, with the report as PDF where one is given. */
  static CarrierRendering report(Carrier carrier, Facts facts, Optional<Rendering> pdf) {
    return new CarrierRendering(carrier, facts, true, pdf);
  }

  @Override
  public String extension() {
    return carrier == Carrier.FHIR ? "json" : "hl7";
  }

  @Override
  public boolean isStackable() {
    return true;
  }

  @Override
  public boolean isListed() {
    return carrier == Carrier.FHIR;
  }

  @Override
  public String separator() {
    return "";
  }

  @Override
  public byte[] toBytes(Result result) throws IOException {
    SentReport report = report(result);
    String text =
        switch (carrier) {
          case FHIR -> FhirWriter.write(report);
          case HL7V2 -> Hl7Writer.write(report);
        };
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private SentReport report(Result result) throws IOException {
    Interpretation interpretation = result.interpretation();
    List<SentFinding> findings =
        interpretation.findings().all().stream()
            .filter(finding -> hasFindings)
            .filter(Finding::isAsked)
            .map(finding -> SentFinding.of(finding, facts))
            .toList();
    List<String> urgent =
        interpretation.alerts().urgent().holding().stream()
            .filter(urgency -> hasFindings)
            .map(urgency -> urgency.words().say())
            .toList();
    List<String> statements =
        interpretation.statements().stream()
            .filter(statement -> hasFindings)
            .map(Statement::text)
            .filter(text -> !urgent.contains(text))
            .toList();
    Optional<byte[]> attached = Optional.empty();
    if (pdf.isPresent()) {
      attached = Optional.of(pdf.get().toBytes(result));
    }
    return new SentReport(
        new SentWorkup(result.document(), facts),
        findings,
        statements,
        urgent,
        new Versions(Cistern.software(), interpretation.factsVersion()),
        attached);
  }
}
