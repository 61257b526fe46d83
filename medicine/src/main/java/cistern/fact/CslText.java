package cistern.fact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads JSON of this library's own resources into maps, lists and text; numbers stay text. RFC
 * 8259, without the words true, false and null, which these resources don't hold.
 */
final class CslText {

  private final String text;
  private int at;

  private CslText(String text) {
    this.text = text;
  }

  static Object read(String text) {
    CslText json = new CslText(text);
    Object value = json.value();
    json.space();
    if (json.at < text.length()) {
      throw json.broken();
    }
    return value;
  }

  private Object value() {
    return switch (peek()) {
      case '{' -> object();
      case '[' -> array();
      case '"' -> string();
      default -> number();
    };
  }

  private Map<String, Object> object() {
    Map<String, Object> all = new LinkedHashMap<>();
    at++;
    while (peek() != '}') {
      String name = string();
      expect(':');
      all.put(name, value());
      separate('}');
    }
    at++;
    return all;
  }

  private List<Object> array() {
    List<Object> all = new ArrayList<>();
    at++;
    while (peek() != ']') {
      all.add(value());
      separate(']');
    }
    at++;
    return all;
  }

  private String string() {
    expect('"');
    StringBuilder all = new StringBuilder();
    while (text.charAt(at) != '"') {
      char here = text.charAt(at++);
      all.append(here == '\\' ? text.charAt(at++) : here);
    }
    at++;
    return all.toString();
  }

  private String number() {
    int from = at;
    while (at < text.length() && "+-.eE0123456789".indexOf(text.charAt(at)) >= 0) {
      at++;
    }
    if (from == at) {
      throw broken();
    }
    return text.substring(from, at);
  }

  private void separate(char end) {
    if (peek() != end) {
      expect(',');
    }
  }

  private void expect(char wanted) {
    if (peek() != wanted) {
      throw broken();
    }
    at++;
  }

  private char peek() {
    space();
    if (at >= text.length()) {
      throw broken();
    }
    return text.charAt(at);
  }

  private void space() {
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
  }

  private IllegalStateException broken() {
    return new IllegalStateException("not JSON at character " + at);
  }
}
