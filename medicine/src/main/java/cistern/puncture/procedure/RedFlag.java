package cistern.puncture.procedure;

/** A symptom after a puncture that must never wait for a pattern to become clear. */
public enum RedFlag {
  LEG_WEAKNESS("legWeakness", Danger.SPINAL, "New weakness or numbness in a leg?"),
  SADDLE_NUMBNESS("saddleNumbness", Danger.SPINAL, "Numbness between the legs?"),
  BLADDER_OR_BOWEL("bladderOrBowel", Danger.SPINAL, "Cannot pass urine, or cannot hold it?"),
  SEVERE_BACK_PAIN(
      "severeBackPain", Danger.SPINAL, "Severe back pain, or pain shooting into a leg?"),
  FEVER("fever", Danger.MENINGITIS, "Fever?"),
  NECK_STIFFNESS("neckStiffness", Danger.MENINGITIS, "A stiff neck?"),
  RASH("rash", Danger.MENINGITIS, "A new rash?"),
  DROWSINESS("drowsiness", Danger.MENINGITIS, "Drowsy, hard to wake?"),
  SEIZURE("seizure", Danger.BRAIN, "A seizure?"),
  REDUCED_CONSCIOUSNESS("reducedConsciousness", Danger.BRAIN, "Confused or less conscious?"),
  FOCAL_DEFICIT("focalDeficit", Danger.BRAIN, "New weakness of face or arm, or trouble speaking?"),
  VISUAL_LOSS("visualLoss", Danger.BRAIN, "Loss of sight?"),
  NO_LONGER_POSTURAL(
      "noLongerPostural", Danger.PATTERN, "Was worse upright, and no longer depends on posture?"),
  NOT_EASING_LYING("notEasingLying", Danger.PATTERN, "Does not ease on lying flat?"),
  WORSENING("worsening", Danger.PATTERN, "Getting worse?"),
  LONG_LASTING("longLasting", Danger.PATTERN, "Lasting beyond one to two weeks?"),
  DOUBLE_VISION("doubleVision", Danger.CRANIAL_NERVE, "Double vision?"),
  HEARING_LOSS("hearingLoss", Danger.CRANIAL_NERVE, "Hearing loss?"),
  LEAK("leak", Danger.SITE, "Clear fluid leaking from the site?"),
  PUS("pus", Danger.SITE, "Pus or spreading redness at the site?");

  /** What a symptom may stand for, most urgent first. */
  public enum Danger {
    SPINAL("spinal"),
    MENINGITIS("meningitis"),
    BRAIN("brain"),
    PATTERN("pattern"),
    SITE("site"),
    CRANIAL_NERVE("cranial-nerve");

    private final String code;

    Danger(String code) {
      this.code = code;
    }

    /** The name in the keys of facts. */
    public String code() {
      return code;
    }
  }

  private final String field;
  private final Danger danger;
  private final String question;

  RedFlag(String field, Danger danger, String question) {
    this.field = field;
    this.danger = danger;
    this.question = question;
  }

  /** The field of the work-up. */
  public String field() {
    return field;
  }

  /** What it may stand for. */
  public Danger danger() {
    return danger;
  }

  /** The question as it is asked. */
  public String question() {
    return question;
  }
}
