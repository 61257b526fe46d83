package cistern.gel.membrane;

import cistern.fact.Facts;
import cistern.gel.image.Picture;
import cistern.gel.membrane.Sheet.Edge;
import java.util.Optional;

/**
 * Finds the membrane on its surround: what is joined to the corners of the picture by samples of
 * the corners' own brightness is surround, if it leaves one area with four straight edges.
 * Otherwise the membrane is the whole picture: the outer lanes themselves can look like two edges.
 */
public final class SheetFinder {
  /** Pixels averaged into one from which noise no longer tears the surround. */
  private static final int FINE = 3;

  private final int coarse;
  private final double tolerance;
  private final double deepest;
  private final double straight;

  /** A finder with the limits of some facts. */
  public SheetFinder(Facts facts) {
    this.coarse = (int) facts.number("gel.sheet.coarse");
    this.tolerance = facts.number("gel.sheet.tolerance");
    this.deepest = facts.number("gel.sheet.deepest");
    this.straight = facts.number("gel.sheet.straight");
  }

  /** The sheet of a picture. */
  public Sheet find(Picture picture) {
    Sheet whole = Sheet.of(picture.width(), picture.height());
    int factor = Math.max(1, Math.max(picture.width(), picture.height()) / coarse);
    Picture reduced = picture.toReduced(factor);
    Picture small = factor < FINE ? reduced.toSmoothed() : reduced;
    for (Surround.Light light : Surround.Light.values()) {
      boolean[] surround = new Surround(small, tolerance * Picture.WHITE, light).toMask();
      EdgeFit fit = new EdgeFit(surround, small.width(), small.height(), deepest, straight);
      Optional<Edge> left = fit.left();
      Optional<Edge> right = fit.right();
      Optional<Edge> top = fit.top();
      Optional<Edge> bottom = fit.bottom();
      boolean isSheet =
          (left.isPresent() || right.isPresent()) && (top.isPresent() || bottom.isPresent());
      if (isSheet) {
        return new Sheet(
            picture.width(),
            picture.height(),
            left.map(e -> scaled(e, factor)).orElse(whole.left()),
            right.map(e -> scaled(e, factor)).orElse(whole.right()),
            top.map(e -> scaled(e, factor)).orElse(whole.top()),
            bottom.map(e -> scaled(e, factor)).orElse(whole.bottom()));
      }
    }
    return whole;
  }

  private static Edge scaled(Edge edge, int factor) {
    return new Edge(edge.at() * factor, edge.slope());
  }
}
