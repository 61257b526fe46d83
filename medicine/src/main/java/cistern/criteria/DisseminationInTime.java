package cistern.criteria;

/** What stands for dissemination in time in the 2017 edition, strongest first. */
public enum DisseminationInTime {
  ATTACK("attack"),
  MRI("mri"),
  OCB_SUBSTITUTE("ocb_substitute");

  private final String word;

  DisseminationInTime(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
