package cistern.report.figure;

import cistern.report.look.Token;
import cistern.report.look.Tokens;
import cistern.report.markup.Element;
import java.util.Optional;

/**
 * How a shape is drawn. The colour stands twice: as an attribute for print and for a figure on its
 * own, and as a class that lets a page follow light and dark.
 *
 * @param stroke the line, if it is drawn
 * @param fill the area, if it is filled
 * @param width of the line in user units
 * @param dash lengths of strokes and gaps in user units, empty for a full line
 */
public record Pen(Optional<Token> stroke, Optional<Token> fill, double width, String dash) {

  /** A full line. */
  public static Pen line(Token token, double width) {
    return new Pen(Optional.of(token), Optional.empty(), width, "");
  }

  /** A filled area without a line. */
  public static Pen area(Token token) {
    return new Pen(Optional.empty(), Optional.of(token), 0, "");
  }

  /** This pen with a broken line. */
  public Pen withDash(String lengths) {
    return new Pen(stroke, fill, width, lengths);
  }

  /** This pen with a filled area. */
  public Pen withFill(Token token) {
    return new Pen(stroke, Optional.of(token), width, dash);
  }

  /** A shape drawn with this pen. */
  Element toShape(Element shape) {
    String classes =
        (stroke.map(t -> "s-" + t.key() + " ").orElse("")
                + fill.map(t -> "f-" + t.key()).orElse(""))
            .strip();
    Element drawn =
        shape
            .with("class", classes)
            .with("fill", fill.map(Pen::colour).orElse("none"))
            .with("stroke", stroke.map(Pen::colour).orElse("none"));
    Element wide = stroke.isPresent() ? drawn.with("stroke-width", Svg.number(width)) : drawn;
    return dash.isEmpty() ? wide : wide.with("stroke-dasharray", dash);
  }

  static String colour(Token token) {
    return Tokens.standard().shade(token).light();
  }
}
