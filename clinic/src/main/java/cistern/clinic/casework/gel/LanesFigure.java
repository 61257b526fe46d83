package cistern.clinic.casework.gel;

import cistern.clinic.casework.gel.GelFigure.Told;
import cistern.gel.lanes.LaneKind;
import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.report.figure.Lettering;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;

/**
 * All lanes of a gel, numbered, with the lanes of one pair in their colours. Each lane is a group
 * that can be taken by its head, its middle or an edge where there are fields for its place.
 */
final class LanesFigure {

  private static final double WIDE = 640;
  private static final double HEAD = 44;
  private static final double LINE = 16;

  private final GelReading reading;
  private final int pair;
  private final Drawn drawn;

  private LanesFigure(GelReading reading, int pair) {
    LaneWindow window = LaneWindow.of(reading, reading.lanes());
    this.reading = reading;
    this.pair = pair;
    this.drawn = new Drawn(window, WIDE / window.width(), new Spot(0, HEAD));
  }

  /** The figure of a reading with at least one lane; no pair has a number below 0. */
  static Element of(GelReading reading, int pair, Told told) {
    LanesFigure figure = new LanesFigure(reading, pair);
    List<Element> shapes = new ArrayList<>();
    shapes.add(figure.drawn.picture(told.source()));
    reading.lanes().forEach(lane -> shapes.add(figure.lane(lane)));
    return GelFigure.svg("gel-whole", told, figure.drawn.size(0), shapes)
        .with("class", "gel-whole")
        .with("data-scale", Double.toString(figure.drawn.scale()));
  }

  private Element lane(LaneReading lane) {
    boolean isOwn = lane.pair().isPresent() && lane.pair().getAsInt() == pair;
    Token token = isOwn ? token(lane) : Token.QUIET;
    List<Element> grounds =
        drawn.edges(lane, Token.PAPER).stream()
            .map(edge -> edge.with("stroke-width", "3").with("stroke-opacity", "0.6"))
            .toList();
    return Element.of("g", drawn.area(lane).with("class", "grab"))
        .with(grounds)
        .with(drawn.edges(lane, token))
        .with(drawn.reaches(lane))
        .with(head(lane, isOwn, token))
        .with("class", "lane-handle")
        .with("data-place", Integer.toString(lane.index()))
        .with("data-name", "Lane " + (lane.index() + 1) + ", " + kind(lane));
  }

  /** The lane's number and what is on it, above it. */
  private Element head(LaneReading lane, boolean isOwn, Token token) {
    Lettering plain = Lettering.of(token).with(Anchor.MIDDLE);
    Spot middle = new Spot(drawn.x(lane, HEAD, 0), LINE);
    double half = 0.5 * lane.width() * drawn.scale();
    return Element.of(
            "g",
            Svg.rectangle(
                    middle.to(-half, -LINE), middle.to(half, HEAD - LINE), Pen.area(Token.PAPER))
                .with("fill-opacity", "0"),
            Svg.label(middle, "" + (lane.index() + 1), isOwn ? plain.withBold() : plain),
            Svg.label(middle.to(0, LINE), kind(lane), plain))
        .with("class", "lane-head");
  }

  private Token token(LaneReading lane) {
    boolean isCsf =
        reading.pairs().stream()
            .anyMatch(p -> p.csfLane().isPresent() && p.csfLane().getAsInt() == lane.index());
    return isCsf ? Token.FLUID : Token.BLOOD;
  }

  /** A lane's kind with the number of its pair, as short as it can be read. */
  private static String kind(LaneReading lane) {
    String word = lane.kind() == LaneKind.UNKNOWN ? "?" : lane.kind().word();
    return lane.pair().isPresent() ? word + " " + lane.pair().getAsInt() : word;
  }
}
