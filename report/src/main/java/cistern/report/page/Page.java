package cistern.report.page;

import cistern.fact.Facts;
import cistern.interpretation.Interpretation;
import cistern.report.look.Tokens;
import cistern.report.markup.Element;
import cistern.report.markup.Node;
import cistern.report.markup.RawStyle;
import cistern.report.text.PlainMarkup;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Writes the pages of an interpretation as HTML that needs nothing but itself. */
public final class Page {

  private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'";

  private final String software;
  private final Facts facts;

  private Page(String software, Facts facts) {
    this.software = software;
    this.facts = facts;
  }

  /**
   * A writer of pages.
   *
   * @param software the name and version of the program
   * @param facts in force
   */
  public static Page of(String software, Facts facts) {
    return new Page(software, facts);
  }

  /** A page for a screen, self-contained, printable, without a script. */
  public String toHtml(Interpretation interpretation, Audience audience) {
    Element head =
        Element.of(
            "head",
            Element.of("meta").with("charset", "utf-8"),
            Element.of("meta")
                .with("http-equiv", "Content-Security-Policy")
                .with("content", POLICY),
            Element.of("meta")
                .with("name", "viewport")
                .with("content", "width=device-width, initial-scale=1"),
            Element.of("title", title(interpretation, audience)),
            new RawStyle(Tokens.standard().toStyle() + read("screen.css")));
    return "<!DOCTYPE html>\n" + html(head, body(interpretation, audience, Medium.SCREEN)).toText();
  }

  /**
   * The same page for paper, as well-formed markup.
   *
   * @param style added to the style sheet of paper: faces and size of the sheet
   */
  public String toPaper(Interpretation interpretation, Audience audience, String style) {
    Element head =
        Element.of(
            "head",
            Element.of("title", title(interpretation, audience)),
            Element.of("meta")
                .with("name", "subject")
                .with("content", "Interpretation of cerebrospinal fluid and serum"),
            new RawStyle(style + read("paper.css")));
    return html(head, body(interpretation, audience, Medium.PAPER)).toText();
  }

  /** The same page as plain text, without figures. */
  public String toPlainText(Interpretation interpretation, Audience audience) {
    return PlainMarkup.of(body(interpretation, audience, Medium.PAPER));
  }

  private static Element html(Node head, Element body) {
    return Element.of("html", head, Element.of("body", body)).with("lang", "en-GB");
  }

  private Element body(Interpretation interpretation, Audience audience, Medium medium) {
    Sheet sheet = Sheet.of(interpretation, facts, medium, software);
    return switch (audience) {
      case CLINICIAN -> ClinicianPage.of(sheet);
      case REFERRER -> ReferrerLetter.of(sheet);
      case PATIENT -> PatientPage.of(sheet);
    };
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

  private static String read(String resource) {
    try (InputStream in = Objects.requireNonNull(Page.class.getResourceAsStream(resource))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
