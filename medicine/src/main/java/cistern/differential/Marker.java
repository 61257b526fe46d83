package cistern.differential;

/**
 * What stands for antibody made inside the CNS in the cohorts: bands, or κ index in their place.
 */
public enum Marker {
  BANDS("bands", "bands"),
  KAPPA_INDEX("kappa-index", "a raised κ index");

  private final String finding;
  private final String term;

  Marker(String finding, String term) {
    this.finding = finding;
    this.term = term;
  }

  /** The finding it is read from. */
  public String finding() {
    return finding;
  }

  /** The name in sentences, when found. */
  public String term() {
    return term;
  }
}
