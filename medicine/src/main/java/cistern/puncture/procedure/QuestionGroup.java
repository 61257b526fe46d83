package cistern.puncture.procedure;

/** Questions that belong together, and the object of the work-up that holds their answers. */
public enum QuestionGroup {
  SIGNS("before.signs"),
  IMAGING("before.imaging"),
  BLEEDING("before.coagulation"),
  THROMBOSIS("before.thrombosis"),
  SPINE("before.spine"),
  ALLERGIES("before.allergies"),
  TECHNIQUE("before.needle"),
  HISTORY("before.history"),
  ARRANGEMENTS("before"),
  DONE("done"),
  HEADACHE("after.headache");

  private final String path;

  QuestionGroup(String path) {
    this.path = path;
  }

  /** Where in {@code procedure} the answers stand, as dotted field names. */
  public String path() {
    return path;
  }
}
