package cistern.report.paper;

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

  /** A page for a screen, self-contained, printable, without a script. */
  static String toScreen(Paper paper, Element body) {
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
            Element.of("title", paper.title()),
            new RawStyle(Tokens.standard().toStyle() + read(PageFrame.class, "screen.css")));
    return "<!DOCTYPE html>\n" + html(paper, head, body).toText();
  }

  /**
   * A page for paper, as well-formed markup; every sheet says whose it is and which of how many.
   *
   * @param style added to the style sheet of paper: faces and size of the sheet
   */
  static String toPaper(Paper paper, String style, Element body) {
    Element head =
        Element.of(
            "head",
            Element.of("title", paper.title()),
            Element.of("meta")
                .with("name", "subject")
                .with("content", paper.front().kind().subject()),
            new RawStyle(read(PageFrame.class, "print.css") + everySheet(paper) + style));
    return html(paper, head, body).toText();
  }

  private static String everySheet(Paper paper) {
    boolean isLabels = paper.front().kind() == Paper.Kind.LABELS;
    return isLabels ? "" : foot(paper);
  }

  private static String foot(Paper paper) {
    boolean isCard = paper.front().kind() == Paper.Kind.CARD;
    String letters =
        ";font-family:'Source Sans 3';font-size:" + (isCard ? "6pt" : "7.5pt") + ";color:#555C60}";
    return "@page{@bottom-left{width:"
        + (isCard ? "78mm" : "155mm")
        + ";content:\""
        + quoted(whose(paper) + " · " + paper.front().banner())
        + "\""
        + letters
        + "@bottom-right{width:15mm;content:counter(page) \" / \" counter(pages)"
        + letters
        + "}";
  }

  /** The title with the person, who stands first in what was taken. */
  private static String whose(Paper paper) {
    String taken = paper.front().taken();
    int end = taken.indexOf(" · ");
    return paper.title() + (end < 0 ? "" : " · " + taken.substring(0, end));
  }

  /** A text that no style sheet reads as anything else: all but plain signs as their numbers. */
  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              boolean isPlain =
                  c == ' '
                      || c == '.'
                      || c == ','
                      || c == '-'
                      || (c < 0x80 && Character.isLetterOrDigit(c));
              if (isPlain) {
                quoted.appendCodePoint(c);
              } else if (c >= ' ') {
                quoted.append('\\').append(Integer.toHexString(c)).append(' ');
              }
            });
    return quoted.toString();
  }

  private static Element html(Paper paper, Element head, Element body) {
    String language = paper.front().language().toLanguageTag();
    return Element.of("html", head, Element.of("body", body)).with("lang", language);
  }

  /** A text that lies beside a class. */
  public static String read(Class<?> beside, String resource) {
    try (InputStream in = Objects.requireNonNull(beside.getResourceAsStream(resource))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
