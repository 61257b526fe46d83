package cistern.report.figure;

import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.PAPER;

import cistern.finding.Verdict;
import cistern.report.markup.Element;
import java.util.List;

/**
 * The mark of a verdict: told by its shape, never by colour.
 *
 * @param radius of its disc or ring, in user units
 */
public record VerdictMark(double radius) {

  /** In a line of text or on a ruler. */
  public static final VerdictMark PLAIN = new VerdictMark(4.5);

  /** Inside its uncertainty region. */
  static final VerdictMark SMALL = new VerdictMark(3.4);

  private static final double LINE = 1.6;

  /** Strokes and gaps around a dashed ring. */
  private static final int DASHES = 8;

  /** The mark of a verdict around a spot. */
  public List<Element> of(Verdict verdict, Spot spot) {
    Element ring = Svg.circle(spot, radius, Pen.line(INK, LINE).withFill(PAPER));
    String dash = Svg.number(Math.PI * radius / DASHES);
    return switch (verdict) {
      case ABOVE -> List.of(Svg.circle(spot, radius, Pen.line(INK, LINE).withFill(INK)));
      case WITHIN -> List.of(ring);
      case BORDERLINE -> List.of(ring, Svg.path(half(spot), Pen.area(INK)));
      case BELOW -> List.of(Svg.polygon(triangle(spot), Pen.line(INK, LINE).withFill(INK)));
      case UNDETERMINED ->
          List.of(Svg.circle(spot, radius, Pen.line(INK, LINE).withFill(PAPER).withDash(dash)));
    };
  }

  private String half(Spot spot) {
    String r = Svg.number(radius);
    return "M%s %s a%s %s 0 0 0 0 %s z"
        .formatted(
            Svg.number(spot.x()), Svg.number(spot.y() - radius), r, r, Svg.number(2 * radius));
  }

  private List<Spot> triangle(Spot spot) {
    return List.of(
        spot.to(-radius, -radius * 0.8), spot.to(radius, -radius * 0.8), spot.to(0, radius));
  }
}
