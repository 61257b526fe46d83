package cistern.report.look;

/** What a colour means. Two hues carry meaning, everything else is ink and paper. */
public enum Token {
  PAPER("paper"),
  INK("ink"),
  QUIET("quiet"),
  HAIRLINE("hairline"),
  FLUID("fluid"),
  FLUID_TINT("fluid-tint"),
  BLOOD("blood"),
  BLOOD_TINT("blood-tint");

  private final String key;

  Token(String key) {
    this.key = key;
  }

  /** The name in tables and style sheets. */
  public String key() {
    return key;
  }
}
