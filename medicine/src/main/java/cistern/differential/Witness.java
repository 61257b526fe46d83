package cistern.differential;

/** Findings that speak of the same thing and are therefore heard once. */
public enum Witness {
  INTRATHECAL_SYNTHESIS("intrathecal-synthesis", "antibody made inside the CNS"),
  ANTIBODY_PATTERN("antibody-pattern", "antibodies against several viruses"),
  CELLS("cells", "cells"),
  BARRIER("barrier", "barrier"),
  SPECIFIC_ANTIBODY("specific-antibody", "one specific antibody");

  private final String code;
  private final String term;

  Witness(String code, String term) {
    this.code = code;
    this.term = term;
  }

  /** The name in files. */
  public String code() {
    return code;
  }

  /** The name in sentences. */
  public String term() {
    return term;
  }
}
