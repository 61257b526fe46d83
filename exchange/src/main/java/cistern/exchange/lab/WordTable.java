package cistern.exchange.lab;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** A resource table from words to meanings; case, blanks and points at the end do not matter. */
final class WordTable {

  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final Pattern END = Pattern.compile("[\\s:;,.*]+$");

  private final Map<String, String> meanings = new LinkedHashMap<>();

  private WordTable(List<String[]> rows) {
    rows.forEach(row -> meanings.put(plain(row[0]), row[1]));
  }

  /** Reads a table beside this class. */
  static WordTable read(String resource) {
    return new WordTable(rows(resource));
  }

  /** The rows of a table beside this class, without its heading. */
  static List<String[]> rows(String resource) {
    try (InputStream in = WordTable.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("no table " + resource);
      }
      BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      return lines.lines().skip(1).map(line -> line.split("\t", -1)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The meaning of a word, if it is listed. */
  Optional<String> find(String word) {
    String meaning = meanings.get(word);
    return Optional.ofNullable(meaning == null ? meanings.get(plain(word)) : meaning);
  }

  static String plain(String word) {
    String spaced = word.replace('_', ' ').replace('\u00a0', ' ');
    String single = BLANKS.matcher(spaced).replaceAll(" ");
    return END.matcher(single).replaceFirst("").strip().toLowerCase(Locale.ROOT);
  }
}
