package cistern.gel.overlay;

import cistern.gel.image.Picture;
import cistern.gel.image.Posture;
import cistern.gel.reading.GelReading;
import cistern.gel.reading.LaneReading;
import cistern.gel.reading.LaneReading.BandMark;
import cistern.gel.reading.PairReading;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.util.OptionalInt;

/**
 * A reading drawn over its picture. A band that only the CSF has is a filled mark in the colour of
 * the fluid, a shared one an open mark joined to its counterpart, one that only the serum has a
 * filled mark in the colour of blood; shape and place tell them apart in grey as well.
 */
public final class Overlay {
  private static final Color FLUID = new Color(0x0B, 0x6E, 0x7F);
  private static final Color BLOOD = new Color(0x8A, 0x3B, 0x12);
  private static final Color INK = new Color(0x1A, 0x1A, 0x1A);
  private static final Color PAPER = Color.WHITE;
  private static final int HEAD = 74;
  private static final int FOOT = 64;
  private final GelReading reading;
  private final Crop crop;
  private final Graphics2D ink;
  private final int rows;

  private Overlay(GelReading reading, Crop crop, Graphics2D ink, int rows) {
    this.reading = reading;
    this.crop = crop;
    this.ink = ink;
    this.rows = rows;
  }

  /** The picture with its reading drawn over it. */
  public static BufferedImage of(Picture picture, GelReading reading) {
    boolean isAcross = reading.picture().posture() == Posture.ACROSS;
    Picture upright = isAcross ? picture.toTransposed() : picture;
    Crop crop = Crop.of(upright.width(), upright.height(), reading.lanes());
    BufferedImage sheet =
        new BufferedImage(
            crop.drawnWidth(), crop.drawnHeight() + HEAD + FOOT, BufferedImage.TYPE_INT_RGB);
    Graphics2D ink = sheet.createGraphics();
    ink.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    ink.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    ink.setColor(PAPER);
    ink.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
    ink.drawImage(crop.cut(upright), 0, HEAD, crop.drawnWidth(), crop.drawnHeight(), null);
    new Overlay(reading, crop, ink, upright.height()).draw();
    ink.dispose();
    return sheet;
  }

  private void draw() {
    for (LaneReading lane : reading.lanes()) {
      edges(lane);
      heading(lane);
      for (int i = 0; i < lane.bands().size(); i++) {
        mark(lane, lane.bands().get(i));
      }
    }
    reading.pairs().forEach(this::pair);
  }

  private double column(LaneReading lane, double row) {
    return lane.xCentre() + (row - rows / 2.0) * lane.slope();
  }

  private double x(LaneReading lane, double row, double widths) {
    return crop.x(column(lane, row) + widths * lane.width());
  }

  private double y(double row) {
    return HEAD + crop.y(row);
  }

  private void edges(LaneReading lane) {
    double top = crop.top();
    double bottom = crop.top() + crop.height();
    boolean isGood = lane.quality() == LaneReading.Quality.GOOD;
    float[] dashes = {5, 5};
    stroke(INK, isGood ? new BasicStroke(1) : new BasicStroke(1, 0, 0, 1, dashes, 0));
    for (double side : new double[] {-0.5, 0.5}) {
      ink.draw(new Line2D.Double(x(lane, top, side), y(top), x(lane, bottom, side), y(bottom)));
    }
  }

  private void heading(LaneReading lane) {
    ink.setColor(colour(lane));
    ink.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 19));
    centred(lane.kind().word(), x(lane, crop.top(), 0), 26);
    ink.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 16));
    centred(
        lane.quality() == LaneReading.Quality.GOOD ? "lane " + lane.index() : lane.quality().word(),
        x(lane, crop.top(), 0),
        52);
  }

  private static Color colour(LaneReading lane) {
    return switch (lane.kind()) {
      case CSF -> FLUID;
      case SERUM -> BLOOD;
      case CONTROL, BLANK, UNKNOWN -> INK;
    };
  }

  /** A triangle beside the lane, pointing at the band; filled when the band has no counterpart. */
  private void mark(LaneReading lane, BandMark band) {
    double y = y(band.y());
    double tip = x(lane, band.y(), -0.5);
    double size = 11;
    java.awt.geom.Path2D triangle = new java.awt.geom.Path2D.Double();
    triangle.moveTo(tip + 2, y);
    triangle.lineTo(tip - size, y - size * 0.55);
    triangle.lineTo(tip - size, y + size * 0.55);
    triangle.closePath();
    stroke(PAPER, new BasicStroke(4));
    ink.draw(triangle);
    stroke(colour(lane), new BasicStroke(1.6f));
    if (band.matched().isEmpty()) {
      ink.fill(triangle);
    } else {
      ink.setColor(PAPER);
      ink.fill(triangle);
      ink.setColor(colour(lane));
    }
    ink.draw(triangle);
  }

  private void pair(PairReading pair) {
    if (pair.csfLane().isPresent() && pair.serumLane().isPresent()) {
      LaneReading csf = reading.lanes().get(pair.csfLane().getAsInt());
      LaneReading serum = reading.lanes().get(pair.serumLane().getAsInt());
      csf.bands().forEach(b -> join(csf, serum, b));
      caption(
          pair,
          0.5 * (x(csf, crop.top() + crop.height(), 0) + x(serum, crop.top() + crop.height(), 0)));
    }
  }

  private void join(LaneReading csf, LaneReading serum, BandMark band) {
    OptionalInt matched = band.matched();
    if (matched.isPresent()) {
      BandMark other = serum.bands().get(matched.getAsInt());
      boolean isRight = serum.xCentre() > csf.xCentre();
      double from = x(csf, band.y(), isRight ? 0.5 : -0.5);
      double to = x(serum, other.y(), isRight ? -0.5 : 0.5);
      stroke(PAPER, new BasicStroke(4));
      Line2D line = new Line2D.Double(from, y(band.y()), to, y(other.y()));
      ink.draw(line);
      stroke(INK, new BasicStroke(1.6f));
      ink.draw(line);
    }
  }

  private void caption(PairReading pair, double x) {
    int foot = HEAD + crop.drawnHeight();
    ink.setColor(INK);
    ink.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 17));
    centred(
        pair.pattern().map(p -> "pattern " + p.number()).orElse("no pattern")
            + (pair.needsReview() ? " ?" : ""),
        x,
        foot + 24);
    ink.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 15));
    pair.counts()
        .ifPresent(c -> centred(c.csfOnly() + " only, " + c.shared() + " shared", x, foot + 46));
  }

  private void centred(String text, double x, double y) {
    int width = ink.getFontMetrics().stringWidth(text);
    double at = Math.clamp(x - width / 2.0, 2, Math.max(2, crop.drawnWidth() - width - 2.0));
    ink.drawString(text, (float) at, (float) y);
  }

  private void stroke(Color colour, BasicStroke stroke) {
    ink.setColor(colour);
    ink.setStroke(stroke);
  }
}
