package cistern.clinic.casework;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Fields as one text, as browsers send them. */
public final class DraftText {

  private DraftText() {}

  /** The text of some fields. */
  public static String of(Map<String, String> typed) {
    return typed.entrySet().stream()
        .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
        .collect(Collectors.joining("&"));
  }

  /** The fields of a text. */
  public static Map<String, String> parse(String text) {
    Map<String, String> typed = new TreeMap<>();
    Arrays.stream(text.split("&", -1))
        .map(pair -> pair.split("=", 2))
        .filter(pair -> pair.length == 2)
        .forEach(pair -> typed.put(decoded(pair[0]), decoded(pair[1])));
    return typed;
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static String decoded(String text) {
    return URLDecoder.decode(text, StandardCharsets.UTF_8);
  }
}
