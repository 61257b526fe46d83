package cistern.report.markup;

import java.util.List;

/**
 * Some nodes one after another without an element around them.
 *
 * @param children in order
 */
public record Fragment(List<Node> children) implements Node {

  /** Copies the children. */
  public Fragment {
    children = List.copyOf(children);
  }

  /** Some nodes. */
  public static Fragment of(Node... children) {
    return new Fragment(List.of(children));
  }

  @Override
  public void toMarkup(StringBuilder out) {
    children.forEach(c -> c.toMarkup(out));
  }
}
