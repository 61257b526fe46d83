package cistern.report.page;

import cistern.report.look.Tokens;
import cistern.report.markup.Element;
import cistern.report.markup.RawStyle;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** What stands around the body of every page: the head, the style sheet, the language. */
public final class PageFrame {

  private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'";

  private PageFrame() {}

  /**
   * A page for a screen, self-contained, printable, without a script.
   *
   * @param style added to the style sheet of the screen
   */
  public static String toScreen(String title, String style, Element body) {
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
            Element.of("title", title),
            new RawStyle(
                Tokens.standard().toStyle() + read(PageFrame.class, "screen.css") + style));
    return "<!DOCTYPE html>\n" + html(head, body).toText();
  }

  /**
   * A page for paper, as well-formed markup.
   *
   * @param subject what the document is about
   * @param style added to the style sheet of paper: faces and size of the sheet
   */
  public static String toPaper(String title, String subject, String style, Element body) {
    Element head =
        Element.of(
            "head",
            Element.of("title", title),
            Element.of("meta").with("name", "subject").with("content", subject),
            new RawStyle(style + read(PageFrame.class, "paper.css")));
    return html(head, body).toText();
  }

  private static Element html(Element head, Element body) {
    return Element.of("html", head, Element.of("body", body)).with("lang", "en-GB");
  }

  /** A style sheet that lies beside a class. */
  public static String read(Class<?> beside, String resource) {
    try (InputStream in = Objects.requireNonNull(beside.getResourceAsStream(resource))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
