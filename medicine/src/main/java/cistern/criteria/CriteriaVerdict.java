package cistern.criteria;

/** What an edition says; a better state never comes before a worse one. */
public enum CriteriaVerdict {
  NOT_MET("not-met"),
  UNDETERMINED("undetermined"),
  MET("met");

  private final String word;

  CriteriaVerdict(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
