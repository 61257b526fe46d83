package cistern.bands;

/** What the bands say about antibody made inside the CNS. */
public enum BandVerdict {
  POSITIVE("positive"),
  BORDERLINE("borderline"),
  NEGATIVE("negative"),
  UNDETERMINED("undetermined");

  private final String word;

  BandVerdict(String word) {
    this.word = word;
  }

  /** The word used in files and on pages. */
  public String word() {
    return word;
  }
}
