package cistern.puncture.procedure;

/** A symptom after a puncture that must never wait for a pattern to become clear. */
public enum WarningSign {
  LEG_WEAKNESS("legWeakness", Danger.SPINAL, "New weakness or numbness in a leg?"),
  SADDLE_NUMBNESS("saddleNumbness", Danger.SPINAL, "Numbness between the legs?"),
  BLADDER_OR_BOWEL("bladderOrBowel", Danger.SPINAL, "Cannot pass urine, or cannot hold it?"),
  SEVERE_BACK_PAIN(
      "severeBackPain", Danger.SPINAL, "Severe back pain, or pain shooting into a leg?"),
  ROOT_PAIN("rootPain", Danger.ROOT, "Pain shooting into a leg for more than two days?"),
  FEVER("fever", Danger.MENINGITIS, "Fever?"),
  NECK_STIFFNESS("neckStiffness", Danger.MENINGITIS, "A stiff neck?"),
  RASH("rash", Danger.MENINGITIS, "A new rash?"),
  DROWSINESS("drowsiness", Danger.BRAIN, "Drowsy, hard to wake?"),
  SEIZURE("seizure", Danger.BRAIN, "A seizure?"),
  REDUCED_CONSCIOUSNESS("reducedConsciousness", Danger.BRAIN, "Confused or less conscious?"),
  FOCAL_DEFICIT("focalDeficit", Danger.BRAIN, "New weakness of face or arm, or trouble speaking?"),
  VISUAL_LOSS("visualLoss", Danger.BRAIN, "Loss of sight?"),
  THUNDERCLAP("thunderclap", Danger.SUDDEN, "A sudden, worst headache within a minute?"),
  NO_LONGER_POSTURAL(
      "noLongerPostural", Danger.PATTERN, "For a day or more no longer dependent on posture?"),
  NOT_EASING_LYING("notEasingLying", Danger.PATTERN, "For a day or more not easing on lying flat?"),
  WORSENING("worsening", Danger.PATTERN, "Getting worse?"),
  LONG_LASTING("longLasting", Danger.PATTERN, "Lasting more than two weeks?"),
  DOUBLE_VISION("doubleVision", Danger.CRANIAL_NERVE, "Double vision?"),
  HEARING_LOSS("hearingLoss", Danger.CRANIAL_NERVE, "Hearing loss?"),
  FACIAL_PALSY("facialPalsy", Danger.CRANIAL_NERVE, "One side of the face weak?"),
  LEAK("leak", Danger.SITE, "Clear fluid leaking from the site?"),
  PUS("pus", Danger.SITE, "Pus or spreading redness at the site?");

  /** What a symptom may stand for, most urgent first. */
  public enum Danger {
    SPINAL("spinal", true),
    MENINGITIS("meningitis", true),
    BRAIN("brain", true),
    SUDDEN("sudden", false),
    PATTERN("pattern", false),
    SITE("site", false),
    CRANIAL_NERVE("cranial-nerve", false),
    ROOT("root", false);

    private final String code;
    private final boolean isEmergency;

    Danger(String code, boolean isEmergency) {
      this.code = code;
      this.isEmergency = isEmergency;
    }

    /** The name in the keys of facts. */
    public String code() {
      return code;
    }

    /** Whether its questions must be asked before anything else is said. */
    public boolean isEmergency() {
      return isEmergency;
    }
  }

  private final String field;
  private final Danger danger;
  private final String question;

  WarningSign(String field, Danger danger, String question) {
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
