package cistern.report.markup;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;
import java.util.Set;

/**
 * An element of HTML or SVG. Its name and the names of its attributes come from the program, its
 * values and texts from anywhere.
 *
 * @param name the tag
 * @param attributes in order
 * @param children in order
 */
public record Element(String name, SequencedMap<String, String> attributes, List<Node> children)
    implements Node {

  /** The elements of HTML that have no end tag. */
  private static final Set<String> VOID = Set.of("br", "col", "hr", "img", "input", "link", "meta");

  /** Copies the collections. */
  public Element {
    attributes = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(attributes));
    children = List.copyOf(children);
  }

  /** An element with some children. */
  public static Element of(String name, Node... children) {
    return new Element(name, new LinkedHashMap<>(), Arrays.asList(children));
  }

  /** An element that holds a text. */
  public static Element of(String name, String text) {
    return of(name, new Text(text));
  }

  /** This element with an attribute set. */
  public Element with(String attribute, String value) {
    SequencedMap<String, String> more = new LinkedHashMap<>(attributes);
    more.put(attribute, value);
    return new Element(name, more, children);
  }

  /** This element with further children. */
  public Element with(List<? extends Node> further) {
    List<Node> more = new ArrayList<>(children);
    more.addAll(further);
    return new Element(name, attributes, more);
  }

  /** This element with further children. */
  public Element with(Node... further) {
    return with(Arrays.asList(further));
  }

  /** This element with a text after its children. */
  public Element withText(String text) {
    return with(new Text(text));
  }

  @Override
  public void toMarkup(StringBuilder out) {
    out.append('<').append(name);
    attributes.forEach(
        (key, value) -> {
          out.append(' ').append(key).append("=\"");
          Text.toEscaped(value, out);
          out.append('"');
        });
    if (VOID.contains(name)) {
      out.append("/>");
      return;
    }
    out.append('>');
    children.forEach(c -> c.toMarkup(out));
    out.append("</").append(name).append('>');
  }
}
