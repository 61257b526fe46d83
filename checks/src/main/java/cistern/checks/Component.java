package cistern.checks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/**
 * A library that the program stands on, as its bill of materials names it.
 *
 * @param group of its coordinates
 * @param name of its coordinates
 * @param version of it
 * @param licences under which it comes, by identifier or name; none when the bill says none
 */
record Component(String group, String name, String version, List<String> licences) {

  Component {
    licences = List.copyOf(licences);
  }

  /** Group and name. */
  String coordinates() {
    return group + ":" + name;
  }

  /** The libraries of a bill of materials (CycloneDX 1.6, XML), by their coordinates. */
  static List<Component> read(Path bill) throws IOException {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultNSInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      Element root = factory.newDocumentBuilder().parse(bill.toFile()).getDocumentElement();
      return children(root, "components").stream()
          .flatMap(all -> children(all, "component").stream())
          .map(Component::of)
          .filter(c -> !c.group().equals("cistern"))
          .sorted(Comparator.comparing(Component::coordinates).thenComparing(Component::version))
          .toList();
    } catch (ParserConfigurationException | SAXException e) {
      throw new IOException("not a bill of materials: " + bill, e);
    }
  }

  private static Component of(Element element) {
    List<String> licences = new ArrayList<>();
    for (Element all : children(element, "licenses")) {
      children(all, "license").forEach(l -> licences.add(text(l, "id") + text(l, "name")));
      children(all, "expression").forEach(e -> licences.add(e.getTextContent().strip()));
    }
    return new Component(
        text(element, "group"), text(element, "name"), text(element, "version"), licences);
  }

  private static List<Element> children(Element parent, String name) {
    return IntStream.range(0, parent.getChildNodes().getLength())
        .mapToObj(parent.getChildNodes()::item)
        .filter(n -> n.getNodeType() == Node.ELEMENT_NODE && name.equals(n.getLocalName()))
        .map(Element.class::cast)
        .toList();
  }

  private static String text(Element parent, String name) {
    return children(parent, name).stream()
        .map(e -> e.getTextContent().strip())
        .findFirst()
        .orElse("");
  }
}
