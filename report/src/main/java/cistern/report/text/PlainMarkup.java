package cistern.report.text;

import cistern.report.markup.Element;
import cistern.report.markup.Fragment;
import cistern.report.markup.Node;
import cistern.report.markup.RawStyle;
import cistern.report.markup.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A page of markup as plain text: one block a paragraph, figures and styles left out. */
public final class PlainMarkup {

  private static final Set<String> BLOCKS =
      Set.of(
          "address", "article", "aside", "caption", "dd", "div", "dl", "dt", "figure", "footer",
          "h1", "h2", "h3", "h4", "header", "li", "main", "nav", "ol", "p", "section", "table",
          "tr", "ul");
  private static final Set<String> SILENT = Set.of("svg", "style", "head", "script");

  private final List<String> blocks = new ArrayList<>();
  private final StringBuilder block = new StringBuilder();

  private PlainMarkup() {}

  /** The text of a node, ending with a line break. */
  public static String of(Node node) {
    PlainMarkup plain = new PlainMarkup();
    plain.read(node);
    plain.end();
    StringBuilder text = new StringBuilder();
    plain.blocks.forEach(b -> text.append(Wrapped.of("", b)).append('\n'));
    return text.toString();
  }

  private void read(Node node) {
    switch (node) {
      case Text text -> block.append(text.value());
      case Fragment fragment -> fragment.children().forEach(this::read);
      case RawStyle style -> {}
      case Element element -> read(element);
    }
  }

  private void read(Element element) {
    if (SILENT.contains(element.name())) {
      return;
    }
    boolean isBlock = BLOCKS.contains(element.name());
    if (isBlock) {
      end();
    }
    block.append(element.name().equals("li") ? "– " : " ");
    element.children().forEach(this::read);
    if (isBlock) {
      end();
    }
  }

  private void end() {
    String text = block.toString().strip();
    block.setLength(0);
    if (!text.isEmpty() && !text.equals("–")) {
      blocks.add(text);
    }
  }
}
