package cistern.report.figure;

import cistern.fact.Facts;

/**
 * The field of a quotient diagram: albumin quotient to the right, the protein's quotient upwards,
 * both logarithmic.
 *
 * @param x of the albumin quotient, a plain ratio
 * @param y of the protein's quotient, a plain ratio; its start is the lower edge
 */
record Plane(LogScale x, LogScale y) {

  static final double WIDTH = 330;
  static final double HEIGHT = 222;
  private static final double LEFT = 50;
  private static final double RIGHT = 62;
  private static final double TOP = 19;
  private static final double BOTTOM = 42;
  private static final double PER_THOUSAND = 1e-3;

  /** The field for a protein. */
  static Plane of(Facts facts, Protein protein) {
    return new Plane(
        scale(facts, "albumin-quotient", new Spot(LEFT, WIDTH - RIGHT)),
        scale(facts, protein.quotient().code(), new Spot(HEIGHT - BOTTOM, TOP)));
  }

  private static LogScale scale(Facts facts, String code, Spot ends) {
    String key = "figure." + code;
    return new LogScale(
        facts.number(key + ".from") * PER_THOUSAND,
        facts.number(key + ".to") * PER_THOUSAND,
        ends.x(),
        ends.y());
  }

  /** The place of two quotients, at the edge when they lie outside. */
  Spot at(double albumin, double quotient) {
    return new Spot(x.at(albumin), y.at(quotient));
  }

  double left() {
    return x.start();
  }

  double right() {
    return x.end();
  }

  double top() {
    return y.end();
  }

  double bottom() {
    return y.start();
  }

  /** The lower left corner. */
  Spot origin() {
    return new Spot(left(), bottom());
  }

  /** The upper right corner. */
  Spot farCorner() {
    return new Spot(right(), top());
  }
}
