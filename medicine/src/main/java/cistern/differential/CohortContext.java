package cistern.differential;

/** Whom the published cohorts followed, and what was known of them before the fluid. */
public enum CohortContext {
  /** A typical first attack; the stated probability does not use the imaging. */
  MRI_NOT_USED("attack-mri-not-used", "a first attack, imaging not yet counted"),
  /** A typical first attack; the imaging is counted and shows dissemination in space. */
  MRI_USED_DIS("attack-mri-used-dis", "a first attack with dissemination in space"),
  /** A typical first attack; the imaging is counted and shows no dissemination in space. */
  MRI_USED_NO_DIS("attack-mri-used-no-dis", "a first attack without dissemination in space");

  private final String code;
  private final String term;

  CohortContext(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The name in files and fact keys. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }
}
