package cistern.exchange.fhir;

import cistern.exchange.json.InputLimits;
import cistern.exchange.json.InputProblem;
import cistern.exchange.json.InputProblems;
import cistern.exchange.json.InputTrouble;
import cistern.exchange.json.Json;
import cistern.exchange.xml.PlainXml;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.SequencedMap;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * XML to the tree that JSON gives: an element's {@code value} is its text, elements of one name are
 * a list, and a resource names its type. A document type is refused, so that no entity is ever
 * resolved; narrative is not read.
 */
final class FhirXml {

  private static final String NARRATIVE = "div";

  /** The attribute of a simple element; a complex one may have a child of this name. */
  private static final String VALUE = "value";

  private final XMLStreamReader xml;
  private final InputLimits limits;
  private int values;

  private FhirXml(XMLStreamReader xml, InputLimits limits) {
    this.xml = xml;
    this.limits = limits;
  }

  /** The resource of a document; empty, with a problem noted, when there is none. */
  static Optional<Json.Structure> read(byte[] bytes, InputLimits limits, InputProblems problems) {
    try {
      XMLStreamReader xml = PlainXml.of(new ByteArrayInputStream(bytes));
      return new FhirXml(xml, limits).document(problems);
    } catch (XMLStreamException e) {
      int line = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNumber());
      int column = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getColumnNumber());
      problems.add(
          InputProblem.of(
              InputTrouble.NOT_XML, "line " + line + ", column " + column, line, column));
      return Optional.empty();
    } catch (MissingResourceException noSentence) {
      // The JDK's parser has no sentence for a sign that a document type must not hold.
      problems.add(InputProblem.of(InputTrouble.DOCTYPE, "line 1"));
      return Optional.empty();
    }
  }

  private Optional<Json.Structure> document(InputProblems problems) throws XMLStreamException {
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.DTD) {
        problems.add(InputProblem.of(InputTrouble.DOCTYPE, where()));
        return Optional.empty();
      }
      if (event == XMLStreamConstants.START_ELEMENT) {
        Optional<Json.Structure> root = resource(0, problems);
        while (root.isPresent() && xml.hasNext()) {
          xml.next();
        }
        return root;
      }
    }
    return Optional.empty();
  }

  private String where() {
    return "line " + xml.getLocation().getLineNumber();
  }

  private Optional<Json.Structure> resource(int depth, InputProblems problems)
      throws XMLStreamException {
    SequencedMap<String, Json> members = new LinkedHashMap<>();
    members.put("resourceType", new Json.Text(xml.getLocalName()));
    return children(members, depth, problems)
        ? Optional.of(new Json.Structure(members))
        : Optional.empty();
  }

  /** Adds attributes and children up to the end of the element; false when a limit is passed. */
  private boolean children(SequencedMap<String, Json> members, int depth, InputProblems problems)
      throws XMLStreamException {
    for (int i = 0; i < xml.getAttributeCount(); i++) {
      members.put(xml.getAttributeLocalName(i), new Json.Text(xml.getAttributeValue(i)));
    }
    if (++values > limits.values() || depth > limits.depth()) {
      boolean isDeep = depth > limits.depth();
      problems.add(
          InputProblem.of(
              isDeep ? InputTrouble.TOO_DEEP : InputTrouble.TOO_MANY_VALUES,
              where(),
              isDeep ? limits.depth() : limits.values()));
      return false;
    }
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.END_ELEMENT) {
        return true;
      }
      if (event == XMLStreamConstants.ENTITY_REFERENCE) {
        problems.add(InputProblem.of(InputTrouble.DOCTYPE, where()));
        return false;
      }
      if (event == XMLStreamConstants.START_ELEMENT && !child(members, depth, problems)) {
        return false;
      }
    }
    return true;
  }

  private boolean child(SequencedMap<String, Json> members, int depth, InputProblems problems)
      throws XMLStreamException {
    String name = xml.getLocalName();
    if (name.equals(NARRATIVE)) {
      return skip(problems);
    }
    Optional<String> simple = Optional.ofNullable(xml.getAttributeValue(null, VALUE));
    SequencedMap<String, Json> inner = new LinkedHashMap<>();
    if (!children(inner, depth + 1, problems)) {
      return false;
    }
    add(members, name, simple.<Json>map(Json.Text::new).orElseGet(() -> value(name, inner)));
    return true;
  }

  /** A wrapper of a resource is the resource. */
  private static Json value(String name, SequencedMap<String, Json> inner) {
    boolean isWrapper = name.equals("resource") || name.equals("contained");
    if (isWrapper
        && inner.size() == 1
        && inner.firstEntry().getValue() instanceof Json.Structure resource) {
      SequencedMap<String, Json> named = new LinkedHashMap<>();
      named.put("resourceType", new Json.Text(inner.firstEntry().getKey()));
      named.putAll(resource.members());
      return new Json.Structure(named);
    }
    return new Json.Structure(inner);
  }

  private static void add(SequencedMap<String, Json> members, String name, Json value) {
    Json before = members.get(name);
    if (before == null) {
      members.put(name, value);
    } else {
      List<Json> all = new ArrayList<>();
      if (before instanceof Json.Sequence(List<Json> items)) {
        all.addAll(items);
      } else {
        all.add(before);
      }
      all.add(value);
      members.put(name, new Json.Sequence(all));
    }
  }

  private boolean skip(InputProblems problems) throws XMLStreamException {
    int open = 1;
    while (open > 0 && xml.hasNext()) {
      int event = xml.next();
      open += event == XMLStreamConstants.START_ELEMENT ? 1 : 0;
      open -= event == XMLStreamConstants.END_ELEMENT ? 1 : 0;
      if (event == XMLStreamConstants.START_ELEMENT && ++values > limits.values()) {
        problems.add(InputProblem.of(InputTrouble.TOO_MANY_VALUES, where(), limits.values()));
        return false;
      }
    }
    return true;
  }
}
