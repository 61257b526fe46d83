package cistern.clinic.casework.gel;

import cistern.gel.overlay.DensityCurve;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.report.figure.Lettering;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.look.Token;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The stain along both lanes of a pair beside their picture: the same heights, and one scale of
 * density for both, so that what one lane has and the other lacks is seen. A band is a disc on its
 * lane's curve, filled where it stands alone, with a hairline through both.
 *
 * @param drawn the picture that they stand beside
 * @param pair the lanes with their bands
 * @param left where the first curve begins
 */
record CurvesFigure(Drawn drawn, EditedPair pair, double left) {

  private static final double WIDE = 84;
  private static final double GAP = 18;
  private static final double ABOVE = 7;

  /** Room under the curves for the scale of density. */
  static final double FOOT = 16;

  /** How wide both are with what parts them. */
  static double width() {
    return 2 * WIDE + GAP;
  }

  /** Both curves, that of the lane which lies left in the picture first. */
  List<Element> shapes(DensityCurve csf, DensityCurve serum) {
    double least = all(csf, serum).min().orElse(0);
    double most = all(csf, serum).max().orElse(0);
    double scale = WIDE / Math.max(most - least, Double.MIN_NORMAL);
    boolean isCsfLeft = pair.isCsfLeft();
    double right = left + WIDE + GAP;
    Traced fluid = new Traced(pair.bands().csf(), csf.od(), isCsfLeft ? left : right, least, scale);
    Traced blood =
        new Traced(pair.bands().serum(), serum.od(), isCsfLeft ? right : left, least, scale);
    List<Element> shapes = new ArrayList<>();
    for (Traced traced : List.of(fluid, blood)) {
      shapes.addAll(curve(traced));
    }
    shapes.addAll(ruler(left, most - least, scale));
    for (Traced traced : List.of(fluid, blood)) {
      for (int i = 0; i < traced.lane().bands().size(); i++) {
        shapes.add(peak(traced, i));
      }
    }
    return shapes;
  }

  private static DoubleStream all(DensityCurve csf, DensityCurve serum) {
    return DoubleStream.concat(
        csf.od().stream().mapToDouble(d -> d), serum.od().stream().mapToDouble(d -> d));
  }

  /**
   * One lane's curve in the figure.
   *
   * @param lane with its bands
   * @param od along it
   * @param from where its least density stands
   * @param least density of the pair
   * @param scale units of the figure for one of density
   */
  private record Traced(
      LaneReading lane, List<Double> od, double from, double least, double scale) {

    /** How far to the right the curve reaches at a share of its height. */
    double x(double share) {
      int i = Math.clamp((int) (share * od.size()), 0, od.size() - 1);
      return from + scale * (od.get(i) - least);
    }
  }

  private double height() {
    return drawn.bottom() - drawn.corner().y();
  }

  private List<Element> curve(Traced traced) {
    boolean isCsf = pair.isCsf(traced.lane());
    Token token = isCsf ? Token.FLUID : Token.BLOOD;
    List<Spot> line = new ArrayList<>();
    for (int i = 0; i < traced.od().size(); i++) {
      double share = (i + 0.5) / traced.od().size();
      line.add(new Spot(traced.x(share), drawn.corner().y() + share * height()));
    }
    List<Spot> area = new ArrayList<>(line);
    area.addFirst(new Spot(traced.from(), drawn.corner().y()));
    area.addLast(new Spot(traced.from(), drawn.bottom()));
    Token tint = isCsf ? Token.FLUID_TINT : Token.BLOOD_TINT;
    return List.of(
        Svg.label(
            new Spot(traced.from(), drawn.corner().y() - ABOVE),
            isCsf ? "CSF" : "serum",
            Lettering.of(token).withBold()),
        Svg.polygon(area, Pen.area(tint)),
        Svg.polyline(line, Pen.line(token, 1.2)));
  }

  /** How long the greatest round density is that fits under one curve. */
  private List<Element> ruler(double from, double range, double scale) {
    double tenth = Math.pow(10, Math.floor(Math.log10(Math.max(range, Double.MIN_NORMAL))));
    double round = range >= 5 * tenth ? 5 * tenth : range >= 2 * tenth ? 2 * tenth : tenth;
    double y = drawn.bottom() + 4;
    Spot end = new Spot(from + round * scale, y);
    return List.of(
        Svg.line(new Spot(from, y), end, Pen.line(Token.QUIET, 1)),
        Svg.line(new Spot(from, y - 3), new Spot(from, y + 3), Pen.line(Token.QUIET, 1)),
        Svg.line(end.to(0, -3), end.to(0, 3), Pen.line(Token.QUIET, 1)),
        Svg.label(end.to(5, 4), Svg.number(round) + " OD", Lettering.of(Token.QUIET)));
  }

  private Element peak(Traced traced, int band) {
    LaneReading lane = traced.lane();
    BandMark mark = lane.bands().get(band);
    double y = drawn.y(mark);
    Spot top = new Spot(traced.x((y - drawn.corner().y()) / height()), y);
    Token token = pair.isCsf(lane) ? Token.FLUID : Token.BLOOD;
    boolean isShared = pair.bands().isShared(lane, band);
    Pen pen = Pen.line(token, 1.4).withFill(isShared ? Token.PAPER : token);
    return Element.of(
            "g",
            Svg.line(new Spot(left, y), new Spot(left + width(), y), Pen.line(Token.QUIET, 0.5)),
            Svg.label(top.to(6, 0), pair.name(lane, band), Lettering.of(Token.INK))
                .with("dominant-baseline", "central")
                .with("class", "f-ink peak-name"),
            Drawn.steady(
                top,
                Svg.circle(new Spot(0, 0), 3, pen),
                Svg.line(new Spot(-5, -5), new Spot(5, 5), Pen.line(Token.INK, 1.6))
                    .with("class", "s-ink cross")))
        .with("class", pair.bands().isKept(lane, band) ? "peak" : "peak struck")
        .with("data-band", GelEdit.key(lane.index(), band));
  }
}
