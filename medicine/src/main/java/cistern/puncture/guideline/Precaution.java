package cistern.puncture.guideline;

import cistern.fact.Facts;
import cistern.fact.Grounds;

/**
 * One thing to look at before a puncture.
 *
 * @param code the name in files
 * @param state whether it is there, open or looked at
 * @param text what it is and what to do, for a doctor
 * @param grounds what it rests on
 */
public record Precaution(String code, State state, String text, Grounds grounds) {

  /** How far a precaution has got. */
  public enum State {
    /** It is there and speaks against, or for more care. */
    PRESENT("present"),
    /** Nobody has answered. */
    OPEN("open"),
    /** It was looked at and is not there, or is done. */
    CHECKED("checked");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /** A precaution whose sentence is a fact. */
  public static Precaution present(Facts facts, String code, String detail) {
    return of(facts, code, State.PRESENT, detail + facts.word(key(code)));
  }

  /** A precaution that nobody has answered. */
  public static Precaution open(Facts facts, String code, String question) {
    return of(facts, code, State.OPEN, question);
  }

  /** A precaution that was looked at. */
  public static Precaution checked(Facts facts, String code, String finding) {
    return of(facts, code, State.CHECKED, finding);
  }

  private static Precaution of(Facts facts, String code, State state, String text) {
    return new Precaution(code, state, text, facts.grounds(key(code)));
  }

  private static String key(String code) {
    return "precaution." + code;
  }
}
