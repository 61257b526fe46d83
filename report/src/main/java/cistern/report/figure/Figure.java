package cistern.report.figure;

import cistern.report.markup.Element;
import java.util.List;

/**
 * A drawing with everything that stands for it where it can't be seen.
 *
 * @param id unique on a page, letters, digits and hyphens
 * @param title the finding in a sentence
 * @param description the numbers in sentences
 * @param size width and height in user units, as a spot
 * @param shapes the drawing
 * @param table the same numbers
 */
public record Figure(
    String id,
    String title,
    String description,
    Spot size,
    List<Element> shapes,
    FigureTable table) {

  private static final String NAMESPACE = "http://www.w3.org/2000/svg";
  private static final String FACE = "'Source Sans 3', 'Segoe UI', Roboto, Helvetica, sans-serif";

  /** Copies the shapes. */
  public Figure {
    shapes = List.copyOf(shapes);
  }

  /** The drawing as SVG that stands on its own or in a page. */
  public Element toSvg() {
    String width = Svg.number(size.x());
    String height = Svg.number(size.y());
    return Element.of("svg")
        .with("xmlns", NAMESPACE)
        .with("viewBox", "0 0 %s %s".formatted(width, height))
        .with("width", width)
        .with("height", height)
        .with("role", "img")
        .with("aria-labelledby", "%s-title %s-desc".formatted(id, id))
        .with("font-family", FACE)
        .with(
            Element.of("title", title).with("id", id + "-title"),
            Element.of("desc", description).with("id", id + "-desc"))
        .with(shapes);
  }
}
