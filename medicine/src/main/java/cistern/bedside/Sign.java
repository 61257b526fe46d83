package cistern.bedside;

/** A sign or a circumstance that turns a finding in the fluid into an emergency. */
public enum Sign {
  FEVER("fever", "fever"),
  CONFUSION("confusion", "confusion"),
  NEW_SEIZURE("newSeizure", "a new seizure"),
  SUDDEN_HEADACHE("suddenHeadache14d", "a sudden headache within 14 days"),
  ASCENDING_WEAKNESS("ascendingWeakness", "ascending weakness"),
  CANCER_HISTORY("cancerHistory", "a history of cancer"),
  IMMUNOCOMPROMISED("immunocompromised", "immunocompromise"),
  ANTIBIOTICS_GIVEN("antibioticsGiven", "antibiotics given"),
  VISUAL_LOSS("visualLoss", "visual loss"),
  LEG_OR_BLADDER_SIGNS("legOrBladderSigns", "leg or bladder signs"),
  PURPURA("purpura", "purpura"),
  NEUROSURGERY("neurosurgery", "neurosurgery or a shunt lately");

  private final String code;
  private final String term;

  Sign(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The field of the work-up. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }
}
