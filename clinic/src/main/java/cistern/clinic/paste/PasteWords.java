package cistern.clinic.paste;

import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/** The words that laboratories use: names of analytes, fluids, columns and flags. */
final class PasteWords {

  private static final Map<String, String> MEANINGS = meanings();
  private static final String COLUMN = "@column";
  private static final List<String> FLUIDS =
      MEANINGS.entrySet().stream()
          .filter(e -> Compartment.parse(e.getValue().replace("@", "")).isPresent())
          .map(Map.Entry::getKey)
          .sorted((a, b) -> b.length() - a.length())
          .toList();

  private PasteWords() {}

  private static Map<String, String> meanings() {
    Map<String, String> words = new HashMap<>();
    try (InputStream in =
            Objects.requireNonNull(PasteWords.class.getResourceAsStream("words.tsv"));
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      lines
          .lines()
          .skip(1)
          .map(line -> line.split("\t", -1))
          .forEach(cells -> words.put(cells[0], cells[1]));
      return Map.copyOf(words);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT)
        .replaceAll("[()\\[\\],;|:=\\t]", " ")
        .replaceAll("\\s+", " ")
        .strip();
  }

  private static Optional<String> meaning(String text) {
    return Optional.ofNullable(MEANINGS.get(plain(text)));
  }

  /** Whether a word says that a value lies high or low. */
  static boolean isFlag(String text) {
    return meaning(text).filter("@flag"::equals).isPresent();
  }

  /** Whether a head names the column of units. */
  static boolean isUnitColumn(String head) {
    return meaning(head).filter("@unit"::equals).isPresent();
  }

  /** Whether a head names a column from which nothing is to be taken: ranges, flags, names. */
  static boolean isOtherColumn(String head) {
    return head.isBlank() || meaning(head).filter(COLUMN::equals).isPresent();
  }

  /** The analyte of a name without a fluid. */
  static Optional<Analyte> analyte(String name) {
    return meaning(name).flatMap(Analyte::parse);
  }

  /** The sample of a name with its fluid, such as {@code IgG (serum)}. */
  static Optional<Sample> sample(String name) {
    String plain = plain(name);
    return FLUIDS.stream().flatMap(fluid -> sample(plain, fluid).stream()).findFirst();
  }

  private static Optional<Sample> sample(String plain, String fluid) {
    String rest =
        plain
            .replaceFirst("(^|[\\s-])(in\\s+)?" + Pattern.quote(fluid) + "($|[\\s-])", " ")
            .replaceAll("\\s+", " ")
            .strip();
    return rest.equals(plain)
        ? Optional.empty()
        : analyte(rest).flatMap(a -> compartment(fluid).map(in -> new Sample(a, in)));
  }

  private static Optional<Compartment> compartment(String fluid) {
    return Optional.ofNullable(MEANINGS.get(fluid))
        .flatMap(code -> Compartment.parse(code.replace("@", "")));
  }

  /**
   * A head that names a fluid.
   *
   * @param in the fluid
   * @param rest what stands behind it, such as a unit; empty for nothing
   */
  record FluidHead(Compartment in, String rest) {}

  /** The fluid of a head such as {@code CSF [mg/L]}. */
  static Optional<FluidHead> fluid(String head) {
    String text = head.strip();
    String lower = text.toLowerCase(Locale.ROOT);
    for (String fluid : FLUIDS) {
      String rest = lower.startsWith(fluid) ? text.substring(fluid.length()) : "-";
      if (rest.isEmpty() || rest.matches("[\\s,:(\\[].*")) {
        String bare = rest.replaceAll("^[\\s,:]*[(\\[]?\\s*|\\s*[)\\]]?\\s*$", "");
        boolean isWord = isOtherColumn(bare);
        return compartment(fluid).map(in -> new FluidHead(in, isWord ? "" : bare));
      }
    }
    return Optional.empty();
  }
}
