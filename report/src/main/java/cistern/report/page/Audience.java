package cistern.report.page;

import java.util.Arrays;
import java.util.Optional;

/** For whom a page is written. */
public enum Audience {
  CLINICIAN("clinician"),
  REFERRER("referrer"),
  PATIENT("patient"),
  CHART("chart");

  private final String word;

  Audience(String word) {
    this.word = word;
  }

  /** The word on the command line. */
  public String word() {
    return word;
  }

  /** The audience of a word, if it is one. */
  public static Optional<Audience> parse(String word) {
    return Arrays.stream(values()).filter(a -> a.word.equals(word)).findFirst();
  }
}
