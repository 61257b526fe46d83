package cistern.report.figure;

import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;

/** The shapes of a figure as elements of SVG 1.1. */
public final class Svg {

  private static final int DECIMALS = 2;

  /** Enough to hold any figure of a page and to keep every number finite for a renderer. */
  private static final double FARTHEST = 1e5;

  /** The mean width of a letter over the size of the letters, a little generous. */
  private static final double WIDTH_PER_HEIGHT = 0.53;

  private static final double MARGIN = 2;

  private Svg() {}

  /** A number as SVG reads it: at most two decimals, never an exponent, always finite. */
  public static String number(double value) {
    double finite = Double.isNaN(value) ? 0 : Math.clamp(value, -FARTHEST, FARTHEST);
    BigDecimal rounded = BigDecimal.valueOf(finite).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A straight line. */
  public static Element line(Spot from, Spot to, Pen pen) {
    return pen.toShape(
        Element.of("line")
            .with("x1", number(from.x()))
            .with("y1", number(from.y()))
            .with("x2", number(to.x()))
            .with("y2", number(to.y())));
  }

  /** A line through some spots. */
  public static Element polyline(List<Spot> spots, Pen pen) {
    return pen.toShape(Element.of("polyline").with("points", points(spots)));
  }

  /** An area between some spots. */
  public static Element polygon(List<Spot> spots, Pen pen) {
    return pen.toShape(Element.of("polygon").with("points", points(spots)));
  }

  private static String points(List<Spot> spots) {
    return spots.stream()
        .map(s -> number(s.x()) + "," + number(s.y()))
        .collect(Collectors.joining(" "));
  }

  /** A circle. */
  public static Element circle(Spot centre, double radius, Pen pen) {
    return pen.toShape(
        Element.of("circle")
            .with("cx", number(centre.x()))
            .with("cy", number(centre.y()))
            .with("r", number(radius)));
  }

  /** An ellipse with upright axes; the radii are a spot's two numbers. */
  public static Element ellipse(Spot centre, Spot radii, Pen pen) {
    return pen.toShape(
        Element.of("ellipse")
            .with("cx", number(centre.x()))
            .with("cy", number(centre.y()))
            .with("rx", number(radii.x()))
            .with("ry", number(radii.y())));
  }

  /** A rectangle between two opposite corners. */
  public static Element rectangle(Spot one, Spot other, Pen pen) {
    return pen.toShape(
        Element.of("rect")
            .with("x", number(Math.min(one.x(), other.x())))
            .with("y", number(Math.min(one.y(), other.y())))
            .with("width", number(Math.abs(one.x() - other.x())))
            .with("height", number(Math.abs(one.y() - other.y()))));
  }

  /** A shape described by path commands. */
  public static Element path(String commands, Pen pen) {
    return pen.toShape(Element.of("path").with("d", commands));
  }

  /** A label on its base line. */
  public static Element label(Spot spot, String text, Lettering lettering) {
    Element label =
        Element.of("text", text)
            .with("x", number(spot.x()))
            .with("y", number(spot.y()))
            .with("class", "f-" + lettering.token().key())
            .with("fill", Pen.colour(lettering.token()))
            .with("font-size", number(lettering.size()))
            .with("text-anchor", lettering.anchor().word());
    return lettering.isBold() ? label.with("font-weight", "bold") : label;
  }

  /** A label on a patch of paper, so that lines under it don't cross it. */
  public static List<Element> labelOnPaper(Spot spot, String text, Lettering lettering) {
    double width = text.length() * lettering.size() * WIDTH_PER_HEIGHT;
    double before =
        switch (lettering.anchor()) {
          case START -> 0;
          case MIDDLE -> width / 2;
          case END -> width;
        };
    Spot corner = spot.to(-before - MARGIN, -lettering.size());
    return List.of(
        rectangle(corner, spot.to(width - before + MARGIN, MARGIN + 1), Pen.area(Token.PAPER)),
        label(spot, text, lettering));
  }

  /** A label that reads upwards. */
  public static Element upright(Spot spot, String text, Lettering lettering) {
    return label(spot, text, lettering)
        .with("transform", "rotate(-90 %s %s)".formatted(number(spot.x()), number(spot.y())));
  }
}
