package cistern.exchange.hl7v2;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The signs that part a message, from its first two fields.
 *
 * @param field usually a bar
 * @param component usually a caret
 * @param repetition usually a tilde
 * @param escape usually a backslash
 * @param subcomponent usually an ampersand
 */
record Delimiters(char field, char component, char repetition, char escape, char subcomponent) {

  /** The signs that everybody uses. */
  static final Delimiters USUAL = new Delimiters('|', '^', '~', '\\', '&');

  private static final int NAME = 3;

  /** The delimiters of a header segment; empty when they are not five different signs. */
  static Optional<Delimiters> of(String header) {
    if (header.length() < NAME + 5) {
      return Optional.empty();
    }
    Delimiters found =
        new Delimiters(
            header.charAt(NAME),
            header.charAt(NAME + 1),
            header.charAt(NAME + 2),
            header.charAt(NAME + 3),
            header.charAt(NAME + 4));
    String signs = header.substring(NAME, NAME + 5);
    boolean isUsable =
        signs.chars().distinct().count() == 5
            && signs.chars().noneMatch(c -> Character.isLetterOrDigit(c) || c <= ' ' || c > '~');
    return isUsable ? Optional.of(found) : Optional.empty();
  }

  /** The parts of a text between a sign; always at least one. */
  static List<String> split(String text, char sign) {
    List<String> parts = new ArrayList<>();
    int start = 0;
    for (int at = text.indexOf(sign); at >= 0; at = text.indexOf(sign, start)) {
      parts.add(text.substring(start, at));
      start = at + 1;
    }
    parts.add(text.substring(start));
    return parts;
  }

  /** A text without escapes; an escape that is not known stays as it is. */
  String unescaped(String text) {
    if (text.indexOf(escape) < 0) {
      return text;
    }
    StringBuilder plain = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      int end = text.charAt(at) == escape ? text.indexOf(escape, at + 1) : -1;
      Optional<String> meant = end < 0 ? Optional.empty() : meant(text.substring(at + 1, end));
      if (meant.isPresent()) {
        plain.append(meant.get());
        at = end + 1;
      } else {
        plain.append(text.charAt(at));
        at++;
      }
    }
    return plain.toString();
  }

  private Optional<String> meant(String sequence) {
    return switch (sequence) {
      case "F" -> Optional.of(String.valueOf(field));
      case "S" -> Optional.of(String.valueOf(component));
      case "R" -> Optional.of(String.valueOf(repetition));
      case "E" -> Optional.of(String.valueOf(escape));
      case "T" -> Optional.of(String.valueOf(subcomponent));
      case ".br" -> Optional.of("\n");
      case "H", "N" -> Optional.of("");
      default -> hexadecimal(sequence);
    };
  }

  private static Optional<String> hexadecimal(String sequence) {
    if (!sequence.matches("X([0-9A-Fa-f]{2}){1,32}")) {
      return Optional.empty();
    }
    StringBuilder text = new StringBuilder();
    for (int i = 1; i < sequence.length(); i += 2) {
      text.append((char) Integer.parseInt(sequence.substring(i, i + 2), 16));
    }
    return Optional.of(text.toString());
  }

  /** A text with every delimiter and every line break escaped. */
  String escaped(String text) {
    StringBuilder out = new StringBuilder();
    text.chars().forEach(c -> out.append(escaped((char) c)));
    return out.toString();
  }

  private String escaped(char c) {
    if (c == field) {
      return escape + "F" + escape;
    }
    if (c == component) {
      return escape + "S" + escape;
    }
    if (c == repetition) {
      return escape + "R" + escape;
    }
    if (c == escape) {
      return escape + "E" + escape;
    }
    if (c == subcomponent) {
      return escape + "T" + escape;
    }
    if (c == '\n') {
      return escape + ".br" + escape;
    }
    return c < ' ' ? "" : String.valueOf(c);
  }
}
