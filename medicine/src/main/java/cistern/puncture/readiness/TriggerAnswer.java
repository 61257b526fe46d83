package cistern.puncture.readiness;

import cistern.fact.Grounds;
import cistern.puncture.guideline.Guideline;

/**
 * Whether one guideline would image before a puncture because of one sign.
 *
 * @param trigger the sign
 * @param guideline who says it
 * @param verdict what it says of this person
 * @param text the sign as the guideline words it
 * @param grounds what it rests on
 */
public record TriggerAnswer(
    Trigger trigger, Guideline guideline, Verdict verdict, String text, Grounds grounds) {

  /** What a guideline says. */
  public enum Verdict {
    IMAGE_FIRST("image-first"),
    NOT_TRIGGERED("not-triggered"),
    NOT_LISTED("not-listed"),
    ASK("ask");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /** A sign that may call for imaging first. */
  public enum Trigger {
    CONSCIOUSNESS("consciousness", "reduced consciousness"),
    SEIZURE("seizure", "a seizure"),
    FOCAL_SIGNS("focal-signs", "focal signs"),
    PAPILLOEDEMA("papilloedema", "papilloedema"),
    IMMUNOCOMPROMISE("immunocompromise", "immunocompromise");

    private final String code;
    private final String term;

    Trigger(String code, String term) {
      this.code = code;
      this.term = term;
    }

    /** The name in files and in the keys of facts. */
    public String code() {
      return code;
    }

    /** The name in sentences. */
    public String term() {
      return term;
    }
  }
}
