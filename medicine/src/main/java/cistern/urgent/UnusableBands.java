package cistern.urgent;

/** Why bands that were read count for nothing here, the plainest reason first. */
public enum UnusableBands {
  /** A monoclonal pattern hides what they would say. */
  MONOCLONAL("monoclonal"),
  /** An infusion may have brought them. */
  IMMUNOGLOBULIN("immunoglobulin-given"),
  /** Nobody looked at a serum beside them. */
  WITHOUT_SERUM("bands-without-serum"),
  /** The limits are those of lumbar fluid. */
  NOT_LUMBAR("not-lumbar");

  private final String stop;

  UnusableBands(String stop) {
    this.stop = stop;
  }

  /** The code of the stop that says so. */
  String stop() {
    return stop;
  }
}
