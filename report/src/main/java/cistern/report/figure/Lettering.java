package cistern.report.figure;

import cistern.report.look.Token;

/**
 * How a label is set.
 *
 * @param token its colour
 * @param size of the letters in user units
 * @param anchor where its spot lies
 * @param isBold whether it is set in bold
 */
public record Lettering(Token token, double size, Anchor anchor, boolean isBold) {

  private static final double SIZE = 12.5;

  /** Where the spot of a label lies. */
  public enum Anchor {
    START("start"),
    MIDDLE("middle"),
    END("end");

    private final String word;

    Anchor(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** Letters that begin at their spot. */
  public static Lettering of(Token token) {
    return new Lettering(token, SIZE, Anchor.START, false);
  }

  /** These letters around or before their spot. */
  public Lettering with(Anchor other) {
    return new Lettering(token, size, other, isBold);
  }

  /** These letters in bold. */
  public Lettering withBold() {
    return new Lettering(token, size, anchor, true);
  }
}
