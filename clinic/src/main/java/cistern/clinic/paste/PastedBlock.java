package cistern.clinic.paste;

import cistern.exchange.ucum.Conversion;
import cistern.exchange.ucum.Conversions;
import cistern.measurement.Analyte;
import cistern.measurement.Compartment;
import cistern.measurement.Sample;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a block line by line: name, fluid, number and unit in one line, with tabs, semicolons or
 * spaces between them; or a table whose head names the fluids. Nothing is guessed: a line with
 * anything left over is not understood.
 */
public final class PastedBlock {

  private static final Map<String, String> WORDS = words();
  private static final Pattern LINE =
      Pattern.compile(
          "(.*?)[\\s:=;|]+([<>]?)\\s*([0-9][0-9.,'"
              + " ]*?)[\\s;|]*([^\\s0-9;|][^\\s;|]*|10\\S*)?[\\s;|]*");
  private static final Pattern NUMBER = Pattern.compile("(0|[1-9]\\d*)(\\.\\d+)?");

  private final Conversions conversions;

  private PastedBlock(Conversions conversions) {
    this.conversions = conversions;
  }

  /** A reader that knows units. */
  public static PastedBlock of(Conversions conversions) {
    return new PastedBlock(conversions);
  }

  /** Every line that is not blank. */
  public List<PastedLine> read(String block) {
    List<PastedLine> lines = new ArrayList<>();
    Set<Sample> seen = new HashSet<>();
    for (String line : block.lines().filter(l -> !l.isBlank()).toList()) {
      PastedLine read = line(line.strip());
      boolean isTwice =
          read instanceof PastedLine.Understood understood && !seen.add(understood.sample());
      lines.add(
          isTwice
              ? new PastedLine.NotUnderstood(
                  read.line(), "this result stands in the block already: which is right?")
              : read);
    }
    return lines;
  }

  private PastedLine line(String line) {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches()) {
      return new PastedLine.NotUnderstood(line, "no number in it");
    }
    String number = String.valueOf(matcher.group(3)).strip();
    if (!NUMBER.matcher(number).matches()) {
      return new PastedLine.NotUnderstood(
          line,
          "a comma, a space or an apostrophe can mark decimals or thousands: write the number with"
              + " a point for decimals and nothing else");
    }
    String unit = Optional.ofNullable(matcher.group(4)).orElse("");
    return result(line, String.valueOf(matcher.group(1)), matcher.group(2) + number, unit);
  }

  private PastedLine result(String line, String name, String number, String unit) {
    Optional<Named> named = Named.of(name);
    if (named.isEmpty()) {
      return new PastedLine.NotUnderstood(
          line, "this name is not known here, or the fluid is not named");
    }
    Sample sample = named.get().sample();
    if (unit.isEmpty()) {
      return new PastedLine.NotUnderstood(line, "no unit");
    }
    String ucum = unit.replace('µ', 'u').replace('μ', 'u');
    if (!(conversions.conversion(ucum, sample.analyte()) instanceof Conversion.By)) {
      return new PastedLine.NotUnderstood(
          line, "the unit is not known for " + sample.analyte().term());
    }
    return new PastedLine.Understood(line, sample, number + " " + ucum);
  }

  /** A name with its fluid. */
  private record Named(Sample sample) {

    static Optional<Named> of(String text) {
      String plain = text.toLowerCase(Locale.ROOT).replaceAll("[()\\[\\],;|:=\\t]", " ").strip();
      for (Map.Entry<String, String> fluid : WORDS.entrySet()) {
        if (fluid.getValue().startsWith("@")) {
          Optional<Named> named = of(plain, fluid.getKey(), fluid.getValue().substring(1));
          if (named.isPresent()) {
            return named;
          }
        }
      }
      return Optional.empty();
    }

    private static Optional<Named> of(String plain, String fluid, String code) {
      String rest =
          plain
              .replaceFirst("(^|[\\s-])(in\\s+)?" + Pattern.quote(fluid) + "($|[\\s-])", " ")
              .replaceAll("\\s+", " ")
              .strip();
      if (rest.equals(plain)) {
        return Optional.empty();
      }
      Optional<Analyte> analyte = Optional.ofNullable(WORDS.get(rest)).flatMap(Analyte::parse);
      Optional<Compartment> in = Compartment.parse(code);
      return analyte.isPresent() && in.isPresent()
          ? Optional.of(new Named(new Sample(analyte.get(), in.get())))
          : Optional.empty();
    }
  }

  private static Map<String, String> words() {
    Map<String, String> words = new HashMap<>();
    try (InputStream in =
            Objects.requireNonNull(PastedBlock.class.getResourceAsStream("words.tsv"));
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
}
