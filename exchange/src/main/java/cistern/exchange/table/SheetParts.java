package cistern.exchange.table;

import cistern.exchange.xml.PlainXml;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** What the sheets of a workbook share: its texts, its formats, and where its days begin. */
final class SheetParts {

  private SheetParts() {}

  /** How a number is shown. */
  enum Format {
    PLAIN,
    DATE,
    PERCENT
  }

  /** The shared texts, in order. */
  static List<String> texts(byte[] part) throws XMLStreamException {
    List<String> texts = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    boolean isText = false;
    boolean isPhonetic = false;
    XMLStreamReader xml = open(part);
    while (part.length > 0 && xml.hasNext()) {
      int event = xml.next();
      refuseDoctype(event);
      if (event == XMLStreamConstants.START_ELEMENT) {
        isText = xml.getLocalName().equals("t");
        isPhonetic |= xml.getLocalName().equals("rPh");
      } else if (event == XMLStreamConstants.CHARACTERS && isText && !isPhonetic) {
        text.append(xml.getText());
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        isText = false;
        isPhonetic &= !xml.getLocalName().equals("rPh");
        if (xml.getLocalName().equals("si")) {
          texts.add(text.toString());
          text.setLength(0);
        }
      }
    }
    return texts;
  }

  /** The format of each style, in order. */
  static List<Format> formats(byte[] part) throws XMLStreamException {
    List<Format> formats = new ArrayList<>();
    Map<String, String> codes = new HashMap<>();
    boolean isCells = false;
    XMLStreamReader xml = open(part);
    while (part.length > 0 && xml.hasNext()) {
      int event = xml.next();
      refuseDoctype(event);
      if (event == XMLStreamConstants.START_ELEMENT) {
        String name = xml.getLocalName();
        isCells |= name.equals("cellXfs");
        if (name.equals("numFmt")) {
          codes.put(attribute(xml, "numFmtId"), attribute(xml, "formatCode"));
        } else if (name.equals("xf") && isCells) {
          formats.add(format(attribute(xml, "numFmtId"), codes));
        }
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        isCells &= !xml.getLocalName().equals("cellXfs");
      }
    }
    return formats;
  }

  private static Format format(String id, Map<String, String> codes) {
    String code = codes.getOrDefault(id, "").toLowerCase(Locale.ROOT);
    String bare = code.replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.", "");
    if (id.equals("9") || id.equals("10") || bare.contains("%")) {
      return Format.PERCENT;
    }
    boolean isBuiltIn = id.matches("1[4-9]|2[0-2]|2[7-9]|3[0-6]|4[5-7]|5[0-8]");
    return isBuiltIn || bare.matches(".*[ydhs].*") ? Format.DATE : Format.PLAIN;
  }

  /** Whether the days of the workbook are counted from 1904. */
  static boolean isFrom1904(byte[] part) throws XMLStreamException {
    XMLStreamReader xml = open(part);
    while (part.length > 0 && xml.hasNext()) {
      int event = xml.next();
      refuseDoctype(event);
      if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("workbookPr")) {
        return List.of("1", "true").contains(attribute(xml, "date1904"));
      }
    }
    return false;
  }

  static XMLStreamReader open(byte[] part) throws XMLStreamException {
    return PlainXml.of(new ByteArrayInputStream(part));
  }

  static void refuseDoctype(int event) throws XMLStreamException {
    if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
      throw new XMLStreamException("a document type has no place in a workbook");
    }
  }

  static String attribute(XMLStreamReader xml, String name) {
    String value = xml.getAttributeValue(null, name);
    return value == null ? "" : value;
  }
}
