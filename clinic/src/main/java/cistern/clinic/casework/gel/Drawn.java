package cistern.clinic.casework.gel;

import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.LaneReading;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;

/**
 * A window of the picture in the figure.
 *
 * @param scale units of the figure for a pixel of the picture
 * @param corner where the window's top left corner is
 */
record Drawn(LaneWindow window, double scale, Spot corner) {

  private static final double REACH = 12;

  double right() {
    return corner.x() + window.width() * scale;
  }

  double bottom() {
    return corner.y() + window.height() * scale;
  }

  Spot size(double margin) {
    return new Spot(right() + margin, bottom() + 4);
  }

  /** A lane's column at a height of the figure. */
  double x(LaneReading lane, double y, double widths) {
    return corner.x() + scale * window.x(lane, (y - corner.y()) / scale, widths);
  }

  double y(LaneReading.BandMark band) {
    return corner.y() + scale * window.y(band);
  }

  /** Shapes around a spot that stay as large as they are while the figure is seen larger. */
  static Element steady(Spot spot, Element... around) {
    return Element.of("g", Element.of("g", around).with("class", "steady"))
        .with(
            "transform", "translate(%s %s)".formatted(Svg.number(spot.x()), Svg.number(spot.y())));
  }

  Element picture(String source) {
    return Element.of("image")
        .with("href", source)
        .with("x", Svg.number(corner.x()))
        .with("y", Svg.number(corner.y()))
        .with("width", Svg.number(window.width() * scale))
        .with("height", Svg.number(window.height() * scale))
        .with("preserveAspectRatio", "none");
  }

  /** Where a press draws a band into a lane; what it needs to know of the picture goes with it. */
  Element surface(LaneReading lane) {
    return area(lane)
        .with("class", "surface")
        .with("data-lane", Integer.toString(lane.index()))
        .with("data-top", Svg.number(DrawnPlace.top(window)))
        .with("data-corner", Svg.number(corner.y()))
        .with("data-scale", Double.toString(scale));
  }

  /** What a lane covers, unseen: something to press. */
  Element area(LaneReading lane) {
    return Svg.polygon(
            List.of(
                new Spot(x(lane, corner.y(), -0.5), corner.y()),
                new Spot(x(lane, corner.y(), 0.5), corner.y()),
                new Spot(x(lane, bottom(), 0.5), bottom()),
                new Spot(x(lane, bottom(), -0.5), bottom())),
            Pen.area(Token.PAPER))
        .with("fill-opacity", "0");
  }

  /** Both edges of a lane again, unseen and as broad as a finger takes them. */
  List<Element> reaches(LaneReading lane) {
    List<Element> edges = edges(lane, Token.PAPER);
    return List.of(reach(edges.getFirst(), "-1"), reach(edges.getLast(), "1"));
  }

  private static Element reach(Element edge, String side) {
    return edge.with("class", "reach")
        .with("stroke-width", Svg.number(REACH))
        .with("stroke-opacity", "0")
        .with("data-edge", side);
  }

  /** The left edge of a lane and the right one. */
  List<Element> edges(LaneReading lane, Token token) {
    boolean isGood = lane.quality() == LaneReading.Quality.GOOD;
    Pen pen = isGood ? Pen.line(token, 1) : Pen.line(token, 1).withDash("4 4");
    List<Element> edges = new ArrayList<>();
    for (double side : new double[] {-0.5, 0.5}) {
      edges.add(
          Svg.line(
              new Spot(x(lane, corner.y(), side), corner.y()),
              new Spot(x(lane, bottom(), side), bottom()),
              pen));
    }
    return edges;
  }
}
