package cistern.statement;

/** What can make an interpretation weak, worst first. */
public enum Weakness {
  DRAWS_TOO_FAR_APART("CSF and serum were drawn too far apart to compare"),
  VALUE_DOUBTED("a value looks exchanged, slipped in its unit or implausible"),
  BLOOD("blood in the CSF feigns synthesis, so the immunoglobulin limits were not used"),
  PAIR_INCOMPLETE("albumin or IgG is missing in one of the fluids"),
  GEL_UNCONFIRMED("the gel was read automatically and nobody has confirmed it"),
  DRAWS_DOUBTFUL("CSF and serum were not drawn on the same day"),
  TREATED("a recent infusion or exchange changes the serum IgG"),
  SERUM_LOW("a low serum value falsifies the index"),
  IN_CONFLICT("two methods disagree"),
  NOT_FOCUSED("no bands were reported, and focusing is the most sensitive test"),
  BORDERLINE("a result lies in its grey zone"),
  NEAR_LIMIT("a value lies so near its limit that a repeat could turn the verdict"),
  NOT_LUMBAR("the fluid is not lumbar"),
  TIMES_UNKNOWN("the draw times are not both known, so the pair is taken on trust");

  private final String text;

  Weakness(String text) {
    this.text = text;
  }

  String text() {
    return text;
  }
}
