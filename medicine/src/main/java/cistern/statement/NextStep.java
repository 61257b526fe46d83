package cistern.statement;

/** What would settle most at the least burden; the clinician decides. */
public enum NextStep implements Statement {
  REDRAW_PAIR(
      "redraw-pair",
      "Draw serum and CSF together again, if the answer matters: this pair cannot be compared."),
  CHECK_VALUES(
      "check-values",
      "Ask the laboratory to check the doubted values before anything is concluded."),
  DRAW_SERUM(
      "draw-serum",
      "Measure the missing counterpart in serum drawn with this CSF; a serum drawn now compares"
          + " less well with every hour."),
  COUNT_BLOOD(
      "count-blood",
      "With blood counts and haematocrit of the same day the share of blood can be calculated;"
          + " otherwise repeat the puncture."),
  CONFIRM_GEL("confirm-gel", "A person should look at the gel and confirm or correct the reading."),
  FOCUS(
      "focus", "Isoelectric focusing of this CSF beside its serum would answer the question best."),
  REPEAT_FOCUSING(
      "repeat-focusing",
      "Repeat the focusing on the same pair with equal amounts of IgG in both lanes."),
  ADD_KAPPA("add-kappa", "κ free light chains on the same pair would be an independent look."),
  IMMUNOFIXATION("immunofixation", "Serum immunofixation, if not done, for the ladder."),
  DILUTE_AND_REPEAT(
      "dilute-and-repeat",
      "Ask the laboratory to dilute and repeat the implausibly low measurement.");

  private final String code;
  private final String text;

  NextStep(String code, String text) {
    this.code = code;
    this.text = text;
  }

  /** Whether it is about the sample and not about synthesis. */
  boolean isOfTheSample() {
    return switch (this) {
      case REDRAW_PAIR, CHECK_VALUES, COUNT_BLOOD -> true;
      case DRAW_SERUM,
          CONFIRM_GEL,
          FOCUS,
          REPEAT_FOCUSING,
          ADD_KAPPA,
          IMMUNOFIXATION,
          DILUTE_AND_REPEAT ->
          false;
    };
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String text() {
    return text;
  }
}
