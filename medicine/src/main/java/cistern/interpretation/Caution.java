package cistern.interpretation;

/** What must be said beside every interpretation. */
public enum Caution {
  RESEARCH_ONLY(
      "research-and-education", "For research and education. This is not a medical device."),
  LOCAL_PRACTICE(
      "local-practice-decides",
      "Local practice and the responsible clinician decide; this serves judgement and never"
          + " replaces it."),
  NOT_SPECIFIC(
      "not-specific",
      "Antibody made inside the CNS is seen in infection and other inflammation too; weigh it with"
          + " history, examination and imaging."),
  CONSTANTS_UNCONFIRMED(
      "constants-unconfirmed",
      "Some limits rest on constants recalled from memory, marked so, and to be confirmed against"
          + " their papers."),
  INVENTED("invented-data", "The data of this work-up are invented.");

  private final String code;
  private final String text;

  Caution(String code, String text) {
    this.code = code;
    this.text = text;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The sentence. */
  public String text() {
    return text;
  }
}
