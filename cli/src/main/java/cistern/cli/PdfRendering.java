package cistern.cli;

import cistern.exchange.json.JsonText;
import cistern.fact.Facts;
import cistern.report.page.Audience;
import cistern.report.patient.PatientWords;
import cistern.report.pdf.Attachment;
import cistern.report.pdf.Attachment.Relation;
import cistern.report.pdf.PdfDocument;
import cistern.report.pdf.SourceDate;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A page as PDF, with the work-up and the interpretation inside. */
final class PdfRendering implements Rendering {

  private static final String JSON = "application/json";

  private final PdfDocument document;
  private final Audience audience;
  private final JsonRendering json;

  PdfRendering(Facts facts, PatientWords words, Audience audience) {
    this.document = SourceDate.of(PdfDocument.of(Cistern.software(), facts)).withWords(words);
    this.audience = audience;
    this.json = new JsonRendering(facts);
  }

  @Override
  public String extension() {
    return "pdf";
  }

  @Override
  public boolean isStackable() {
    return false;
  }

  @Override
  public byte[] toBytes(Result result) throws IOException {
    return document.write(result.interpretation(), audience, attachments(result));
  }

  private List<Attachment> attachments(Result result) {
    return List.of(
        new Attachment(
            "workup.json",
            JSON,
            "the work-up that this page was made from",
            Relation.SOURCE,
            JsonText.of(result.document())),
        new Attachment(
            "interpretation.json",
            JSON,
            "the same interpretation for a machine",
            Relation.ALTERNATIVE,
            interpretation(result)));
  }

  private String interpretation(Result result) {
    return new String(json.toBytes(result), StandardCharsets.UTF_8);
  }
}
