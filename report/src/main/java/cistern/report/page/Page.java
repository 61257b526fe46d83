package cistern.report.page;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.markup.Element;
import cistern.report.text.PlainMarkup;

/** Writes the pages of an interpretation as HTML that needs nothing but itself. */
public final class Page {

  private final String software;
  private final Facts facts;
  private final String signature;

  private Page(String software, Facts facts, String signature) {
    this.software = software;
    this.facts = facts;
    this.signature = signature;
  }

  /**
   * A writer of pages.
   *
   * @param software the name and version of the program
   * @param facts in force
   */
  public static Page of(String software, Facts facts) {
    return new Page(software, facts, "");
  }

  /** A writer of pages that end with who signed them and when. */
  public Page withSignature(String signed) {
    return new Page(software, facts, signed);
  }

  /** A page for a screen, self-contained, printable, without a script. */
  public String toHtml(Interpretation interpretation, Audience audience) {
    return PageFrame.toScreen(
        title(interpretation, audience), "", body(interpretation, audience, Medium.SCREEN));
  }

  /**
   * The same page for paper, as well-formed markup.
   *
   * @param style added to the style sheet of paper: faces and size of the sheet
   */
  public String toPaper(Interpretation interpretation, Audience audience, String style) {
    return PageFrame.toPaper(
        title(interpretation, audience),
        "Interpretation of cerebrospinal fluid and serum",
        style,
        body(interpretation, audience, Medium.PAPER));
  }

  /** The body of the page for a screen, to stand inside another page of the program. */
  public Element toBody(Interpretation interpretation, Audience audience) {
    return body(interpretation, audience, Medium.SCREEN);
  }

  /** The same page as plain text, without figures. */
  public String toPlainText(Interpretation interpretation, Audience audience) {
    return PlainMarkup.of(body(interpretation, audience, Medium.PAPER));
  }

  private Element body(Interpretation interpretation, Audience audience, Medium medium) {
    Sheet sheet = Sheet.of(interpretation, facts, medium, software);
    Element body =
        switch (audience) {
          case CLINICIAN -> ClinicianPage.of(sheet);
          case REFERRER -> ReferrerLetter.of(sheet);
          case PATIENT -> PatientPage.of(sheet);
        };
    return signature.isEmpty()
        ? body
        : body.with(Html.paragraph(signature).with("class", "signed"));
  }

  /** The title of the document. */
  static String title(Interpretation interpretation, Audience audience) {
    String id = interpretation.workup().id();
    return switch (audience) {
      case CLINICIAN -> "CSF work-up " + id;
      case REFERRER -> "Letter about CSF work-up " + id;
      case PATIENT -> "Your spinal fluid test";
    };
  }
}
