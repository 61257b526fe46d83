package cistern.report.look;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The colours of all tokens, read from {@code tokens.tsv}. */
public final class Tokens {

  private static final Tokens STANDARD = read("tokens.tsv");

  private final Map<Token, Shade> shades;

  private Tokens(Map<Token, Shade> shades) {
    this.shades = shades;
  }

  /**
   * One colour on light and on dark paper, each {@code #RRGGBB}.
   *
   * @param light on light paper and in print
   * @param dark on dark paper
   */
  public record Shade(String light, String dark) {}

  /** The colours of the program. */
  public static Tokens standard() {
    return STANDARD;
  }

  private static Tokens read(String resource) {
    try (InputStream in = Objects.requireNonNull(Tokens.class.getResourceAsStream(resource))) {
      Map<String, Shade> byKey =
          new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
              .lines()
              .skip(1)
              .map(line -> line.split("\t", -1))
              .collect(Collectors.toMap(cells -> cells[0], c -> new Shade(c[1], c[2])));
      Map<Token, Shade> shades = new EnumMap<>(Token.class);
      for (Token token : Token.values()) {
        shades.put(token, Objects.requireNonNull(byKey.get(token.key()), token.key()));
      }
      return new Tokens(shades);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The colours of a token. */
  public Shade shade(Token token) {
    return Objects.requireNonNull(shades.get(token));
  }

  /** The style sheet that gives every token and every shape of a figure its colour on a screen. */
  public String toStyle() {
    return ":root{color-scheme:light dark;%s}\n@media screen and (prefers-color-scheme:dark){:root{%s}}\n%s"
        .formatted(
            declarations(t -> shade(t).light()), declarations(t -> shade(t).dark()), classes());
  }

  private static String declarations(Function<Token, String> colour) {
    return Arrays.stream(Token.values())
        .map(t -> "--%s:%s".formatted(t.key(), colour.apply(t)))
        .collect(Collectors.joining(";"));
  }

  private static String classes() {
    return Arrays.stream(Token.values())
        .map(t -> ".f-%1$s{fill:var(--%1$s)}.s-%1$s{stroke:var(--%1$s)}".formatted(t.key()))
        .collect(Collectors.joining("\n"));
  }
}
