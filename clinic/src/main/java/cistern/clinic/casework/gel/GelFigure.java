package cistern.clinic.casework.gel;

import cistern.clinic.casework.gel.EditedPair.Join;
import cistern.gel.overlay.DensityCurve;
import cistern.gel.overlay.LaneWindow;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.KeptBands;
import cistern.gel.reading.LaneReading;
import cistern.report.figure.Lettering;
import cistern.report.figure.Lettering.Anchor;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The picture of a gel with what was read drawn over it. A band that stands alone is a filled mark,
 * a shared one an open mark joined to its counterpart, a struck one is crossed out.
 */
final class GelFigure {

  private static final double MARGIN = 54;
  private static final double WIDEST = 240;
  private static final double HIGHEST = 620;
  private static final double LINE = 14.5;
  private static final double HEAD = 22;
  private static final double TIP = 9;

  private GelFigure() {}

  /**
   * Where a figure's picture is and how it is told.
   *
   * @param source the address of the picture's window
   * @param title the finding
   * @param description the numbers
   */
  record Told(String source, String title, String description) {}

  /** Both lanes of a pair with every band, and beside them the stain along each. */
  static Element pair(GelReading reading, EditedPair pair, List<DensityCurve> curves, Told told) {
    KeptBands bands = pair.bands();
    LaneWindow window = pair.window(reading);
    double scale = Math.min(WIDEST / window.width(), HIGHEST / window.height());
    Drawn drawn = new Drawn(window, scale, new Spot(MARGIN, HEAD));
    List<Element> shapes = new ArrayList<>();
    shapes.add(drawn.picture(told.source()));
    boolean isCsfLeft = pair.isCsfLeft();
    for (LaneReading lane : List.of(bands.csf(), bands.serum())) {
      boolean isCsf = pair.isCsf(lane);
      shapes.add(drawn.surface(lane));
      shapes.add(handle(drawn, lane, isCsf));
    }
    pair.joins().forEach(join -> shapes.add(join(drawn, pair, join, isCsfLeft)));
    shapes.addAll(marks(drawn, pair, bands.csf(), isCsfLeft));
    shapes.addAll(marks(drawn, pair, bands.serum(), !isCsfLeft));
    CurvesFigure beside = new CurvesFigure(drawn, pair, drawn.right() + MARGIN);
    shapes.addAll(beside.shapes(curves.getFirst(), curves.getLast()));
    Spot size = drawn.size(MARGIN + CurvesFigure.width() + HEAD).to(0, CurvesFigure.FOOT);
    return svg("gel-pair", told, size, shapes)
        .with("class", "gel-pair")
        .with("data-scale", Double.toString(scale));
  }

  /** The edges of a lane and its name, by which it is taken. */
  private static Element handle(Drawn drawn, LaneReading lane, boolean isCsf) {
    Element name =
        Svg.label(
            new Spot(drawn.x(lane, 0, 0), HEAD - 7),
            isCsf ? "CSF" : "serum",
            Lettering.of(token(isCsf)).with(Anchor.MIDDLE).withBold());
    return Element.of("g")
        .with(drawn.edges(lane, token(isCsf)))
        .with(drawn.reaches(lane))
        .with(Element.of("g", name).with("class", "lane-head"))
        .with("class", "lane-handle")
        .with("data-place", Integer.toString(lane.index()));
  }

  private static Token token(boolean isCsf) {
    return isCsf ? Token.FLUID : Token.BLOOD;
  }

  private static Element join(Drawn drawn, EditedPair pair, Join join, boolean isCsfLeft) {
    LaneReading csf = pair.bands().csf();
    LaneReading serum = pair.bands().serum();
    double side = isCsfLeft ? 0.5 : -0.5;
    double from = drawn.y(csf.bands().get(join.csf()));
    double to = drawn.y(serum.bands().get(join.serum()));
    Spot start = new Spot(drawn.x(csf, from, side), from);
    Spot end = new Spot(drawn.x(serum, to, -side), to);
    return Element.of(
            "g",
            Svg.line(start, end, Pen.line(Token.PAPER, 4)),
            Svg.line(start, end, Pen.line(Token.INK, 1.5)))
        .with("class", pair.isShown(join) ? "join" : "join struck")
        .with(
            "data-joins",
            GelEdit.key(csf.index(), join.csf()) + " " + GelEdit.key(serum.index(), join.serum()));
  }

  /** A mark and a name for each band, at the outer side of its lane; names never overlap. */
  private static List<Element> marks(
      Drawn drawn, EditedPair pair, LaneReading lane, boolean isLeft) {
    List<Element> marks = new ArrayList<>();
    double free = 0;
    List<Integer> fromAbove =
        IntStream.range(0, lane.bands().size())
            .boxed()
            .sorted(Comparator.comparingDouble(i -> lane.bands().get(i).y()))
            .toList();
    for (int band : fromAbove) {
      double labelled = Math.max(drawn.y(lane.bands().get(band)), free);
      free = labelled + LINE;
      Spot name = new Spot(isLeft ? MARGIN - 22 : drawn.right() + 22, labelled);
      marks.add(mark(drawn, pair, new Named(lane, band, name, isLeft)));
    }
    return marks;
  }

  /** A band with the spot of its name. */
  private record Named(LaneReading lane, int band, Spot name, boolean isLeft) {}

  private static Element mark(Drawn drawn, EditedPair pair, Named named) {
    LaneReading lane = named.lane();
    Token token = token(pair.isCsf(lane));
    double y = drawn.y(lane.bands().get(named.band()));
    double out = named.isLeft() ? -1 : 1;
    Spot tip = new Spot(drawn.x(lane, y, 0.5 * out) + out * 2, y);
    boolean isShared = pair.bands().isShared(lane, named.band());
    Pen pen = Pen.line(token, 1.6).withFill(isShared ? Token.PAPER : token);
    Element mark =
        Element.of(
                "g",
                Svg.line(
                    tip.to(out * TIP, 0), named.name().to(-out * 2, 0), Pen.line(Token.QUIET, 0.7)),
                Drawn.steady(
                    tip,
                    Svg.polygon(
                        List.of(
                            new Spot(0, 0), new Spot(out * TIP, -4.5), new Spot(out * TIP, 4.5)),
                        pen),
                    Svg.line(
                            new Spot(out * -1, -6),
                            new Spot(out * (TIP + 1), 6),
                            Pen.line(Token.INK, 1.6))
                        .with("class", "s-ink cross")),
                Svg.label(
                        named.name(),
                        pair.name(lane, named.band()),
                        Lettering.of(Token.INK).with(named.isLeft() ? Anchor.END : Anchor.START))
                    .with("dominant-baseline", "central"))
            .with("class", pair.bands().isKept(lane, named.band()) ? "mark" : "mark struck")
            .with("data-band", GelEdit.key(lane.index(), named.band()));
    return pair.isAdded(lane, named.band())
        ? mark.with(
            Svg.line(
                new Spot(drawn.x(lane, y, -0.5), y),
                new Spot(drawn.x(lane, y, 0.5), y),
                Pen.line(token, 1.2).withDash("3 3")))
        : mark;
  }

  static Element svg(String id, Told told, Spot size, List<Element> shapes) {
    return Element.of("svg")
        .with("viewBox", "0 0 %s %s".formatted(Svg.number(size.x()), Svg.number(size.y())))
        .with("width", Svg.number(size.x()))
        .with("height", Svg.number(size.y()))
        .with("role", "img")
        .with("aria-labelledby", id + "-title " + id + "-desc")
        .with(
            Element.of("title", told.title()).with("id", id + "-title"),
            Element.of("desc", told.description()).with("id", id + "-desc"))
        .with(shapes);
  }
}
