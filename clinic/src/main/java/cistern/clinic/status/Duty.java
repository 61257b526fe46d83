package cistern.clinic.status;

/** Something that waits to be done, in the order in which the day shows it. */
public enum Duty {
  HEADACHE_CALL("Headache calls due"),
  OVERDUE("Results overdue"),
  SERUM("Serum missing"),
  GEL("Gels to confirm"),
  SIGN("Reports to sign"),
  DUE("Results due"),
  PUNCTURE("Punctures planned");

  private final String title;

  Duty(String title) {
    this.title = title;
  }

  /** The heading of those that wait. */
  public String title() {
    return title;
  }
}
