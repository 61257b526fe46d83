package cistern.report;

import cistern.report.markup.Node;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathExpressionException;
import javax.xml.xpath.XPathFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Markup as an XML parser understands it: proof that it is well formed, and a way to ask.
 *
 * @param document the parsed markup
 */
public record Parsed(Document document) {

  /** Parses markup without resolving anything outside it. */
  public static Parsed of(Node node) {
    return of(node.toText());
  }

  /** Parses markup without resolving anything outside it. */
  public static Parsed of(String markup) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      return new Parsed(
          factory.newDocumentBuilder().parse(new InputSource(new StringReader(markup))));
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new IllegalArgumentException("not well formed: " + e.getMessage(), e);
    }
  }

  /** The elements of an XPath. */
  public List<Element> all(String path) {
    try {
      NodeList found =
          (NodeList)
              XPathFactory.newInstance()
                  .newXPath()
                  .evaluate(path, document, XPathConstants.NODESET);
      return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i)).toList();
    } catch (XPathExpressionException e) {
      throw new IllegalArgumentException(path, e);
    }
  }

  /** The texts of the elements of an XPath. */
  public List<String> texts(String path) {
    return all(path).stream().map(e -> e.getTextContent().strip()).toList();
  }

  /** The whole text. */
  public String text() {
    return document.getDocumentElement().getTextContent();
  }

  /** A number in an attribute. */
  public static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }
}
