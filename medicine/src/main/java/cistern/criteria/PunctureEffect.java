package cistern.criteria;

/** What the fluid can change in one edition, all else as it stands. */
public enum PunctureEffect {
  /** Met with positive, not met with negative fluid. */
  DECISIVE("decisive"),
  /** The verdict and the missing items do not depend on it. */
  NO_EFFECT("no-effect"),
  /** Neither: it narrows what is open. */
  NARROWS("narrows"),
  /** The rule set cannot answer, so that what the fluid would change is not known here. */
  UNRESOLVED("unresolved");

  private final String word;

  PunctureEffect(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The effect of two evaluations by one edition, with positive and with negative fluid. */
  static PunctureEffect of(Evaluation positive, Evaluation negative) {
    CriteriaVerdict upper = positive.verdict();
    CriteriaVerdict lower = negative.verdict();
    if (upper == CriteriaVerdict.MET && lower == CriteriaVerdict.NOT_MET) {
      return DECISIVE;
    }
    boolean isSame = upper == lower && positive.missing().equals(negative.missing());
    return isSame ? NO_EFFECT : NARROWS;
  }
}
