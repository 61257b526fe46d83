package cistern.report.patient;

import static cistern.report.look.Token.BLOOD_TINT;
import static cistern.report.look.Token.FLUID;
import static cistern.report.look.Token.FLUID_TINT;
import static cistern.report.look.Token.INK;
import static cistern.report.look.Token.PAPER;

import cistern.report.figure.Figure;
import cistern.report.figure.FigureTable;
import cistern.report.figure.Lettering;
import cistern.report.figure.Pen;
import cistern.report.figure.Spot;
import cistern.report.figure.Svg;
import cistern.report.markup.Element;
import java.util.ArrayList;
import java.util.List;

/** Two plain drawings for the person: where the needle goes, and what a band is. */
final class PatientDrawing {

  private static final FigureTable NO_NUMBERS = new FigureTable(List.of(), List.of());
  private static final double LETTERS = 13;
  private static final int BONES = 6;

  private PatientDrawing() {}

  /** A back from the side: the cord ends above, the needle enters the fluid below it. */
  static Figure needle(PatientWords words) {
    List<Element> shapes = new ArrayList<>();
    shapes.add(Svg.rectangle(new Spot(168, 8), new Spot(200, 188), Pen.area(FLUID_TINT)));
    shapes.add(
        Svg.polygon(
            List.of(new Spot(177, 8), new Spot(191, 8), new Spot(189, 70), new Spot(184, 88)),
            Pen.area(FLUID)));
    for (double x : List.of(180.0, 184.0, 188.0)) {
      shapes.add(Svg.line(new Spot(184, 86), new Spot(x, 186), Pen.line(FLUID, 1)));
    }
    for (int i = 0; i < BONES; i++) {
      double top = 10 + i * 30;
      shapes.add(bone(new Spot(116, top), new Spot(164, top + 22)));
      shapes.add(bone(new Spot(204, top + 2), new Spot(236, top + 13)));
    }
    shapes.add(
        Svg.polyline(
            List.of(new Spot(256, 4), new Spot(252, 60), new Spot(260, 120), new Spot(254, 192)),
            Pen.line(INK, 1.6)));
    shapes.add(Svg.line(new Spot(184, 148), new Spot(312, 158), Pen.line(INK, 2.4)));
    shapes.add(Svg.rectangle(new Spot(312, 151), new Spot(330, 165), Pen.area(INK)));
    shapes.addAll(label(new Spot(336, 163), words.of("needle.needle")));
    shapes.addAll(pointed(new Spot(4, 28), new Spot(182, 40), words.of("needle.cord")));
    shapes.addAll(pointed(new Spot(4, 108), new Spot(118, 111), words.of("needle.bone")));
    shapes.addAll(pointed(new Spot(4, 180), new Spot(174, 176), words.of("needle.fluid")));
    return figure("needle", words, new Spot(390, 196), shapes);
  }

  private static Element bone(Spot one, Spot other) {
    return Svg.rectangle(one, other, Pen.line(INK, 1).withFill(PAPER));
  }

  /** Two strips: bands in the fluid alone, and lines that both hold. */
  static Figure bands(PatientWords words) {
    List<Element> shapes = new ArrayList<>();
    shapes.add(Svg.rectangle(new Spot(20, 26), new Spot(180, 50), Pen.area(FLUID_TINT)));
    shapes.add(Svg.rectangle(new Spot(20, 62), new Spot(180, 86), Pen.area(BLOOD_TINT)));
    for (double x : List.of(58.0, 76.0, 112.0, 140.0)) {
      shapes.add(Svg.line(new Spot(x, 28), new Spot(x, 48), Pen.line(INK, 3)));
    }
    shapes.addAll(label(new Spot(188, 43), words.of("bands.fluid")));
    shapes.addAll(label(new Spot(188, 79), words.of("bands.blood")));
    shapes.add(Svg.line(new Spot(112, 16), new Spot(112, 26), Pen.line(INK, 0.8)));
    shapes.addAll(label(new Spot(100, 12), words.of("bands.band")));
    return figure("bands", words, new Spot(350, 92), shapes);
  }

  private static List<Element> pointed(Spot at, Spot to, String text) {
    List<Element> shapes = new ArrayList<>();
    shapes.add(Svg.line(new Spot(at.x() + 60, at.y() - 4), to, Pen.line(INK, 0.7)));
    shapes.addAll(Svg.labelOnPaper(at, text, letters()));
    return shapes;
  }

  private static List<Element> label(Spot at, String text) {
    return List.of(Svg.label(at, text, letters()));
  }

  private static Lettering letters() {
    return new Lettering(INK, LETTERS, Lettering.Anchor.START, false);
  }

  private static Figure figure(String key, PatientWords words, Spot size, List<Element> shapes) {
    return new Figure(
        "drawing-" + key,
        words.of(key + ".title"),
        words.of(key + ".description"),
        size,
        shapes,
        NO_NUMBERS);
  }
}
