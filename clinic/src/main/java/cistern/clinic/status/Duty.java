package cistern.clinic.status;

/** Something that waits to be done, in the order in which the day shows it. */
public enum Duty {
  /** Somebody must act, and nobody has closed it by name. */
  EMERGENCY("Emergencies", "an emergency"),
  HEADACHE_CALL("Headache calls due", "a headache call"),
  PUNCTURE("Punctures planned", "a puncture"),
  SERUM("Serum missing", "serum missing"),
  OVERDUE("Results overdue", "results overdue"),
  DUE("Results due", "results due"),
  GEL("Gels to confirm", "a gel to confirm"),
  SIGN("Reports to sign", "a report to sign");

  private final String title;
  private final String one;

  Duty(String title, String one) {
    this.title = title;
    this.one = one;
  }

  /** The heading of those that wait. */
  public String title() {
    return title;
  }

  /** One of them, inside a sentence. */
  public String one() {
    return one;
  }
}
