package cistern.clinic.form;

import cistern.clinic.account.Permission;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** One step on the way from a question to a letter; they may be taken in any order. */
public enum CaseStep {
  QUESTION("Question and evidence", Permission.WORK_UP),
  PLAN("Plan", Permission.WORK_UP),
  DRAW("Draw", Permission.DRAW),
  RESULTS("Results", Permission.ENTER_RESULTS),
  BANDS("Bands", Permission.ENTER_RESULTS),
  AFTER("After-care", Permission.CARE_AFTER);

  private final String title;
  private final Permission permission;

  CaseStep(String title, Permission permission) {
    this.title = title;
    this.permission = permission;
  }

  /** Its name on screens. */
  public String title() {
    return title;
  }

  /** What a role must allow, to change it. */
  public Permission permission() {
    return permission;
  }

  /** The word in addresses and in the store. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The step of a word, if it is one. */
  public static Optional<CaseStep> parse(String word) {
    return Arrays.stream(values()).filter(s -> s.word().equals(word)).findFirst();
  }
}
