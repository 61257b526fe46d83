package cistern.urgent;

import cistern.measurement.Answer;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the procedure and the evidence say that turns a finding into an emergency.
 *
 * @param pressure opening pressure, cm[H2O]
 * @param comaScore Glasgow coma scale, 3 to 15
 * @param body what the pressure's limit depends on
 * @param focalSigns new focal signs
 * @param dryTap whether no fluid came
 * @param isForInfection whether the question is infection
 * @param course how the disease has shown itself
 */
public record ClinicalSetting(
    OptionalDouble pressure,
    OptionalInt comaScore,
    Body body,
    Answer focalSigns,
    Answer dryTap,
    boolean isForInfection,
    Course course) {

  /** Nothing is said. */
  public static final ClinicalSetting UNKNOWN =
      new ClinicalSetting(
          OptionalDouble.empty(),
          OptionalInt.empty(),
          new Body(Answer.UNKNOWN, OptionalDouble.empty()),
          Answer.UNKNOWN,
          Answer.UNKNOWN,
          false,
          Course.UNKNOWN);

  /**
   * How the disease has shown itself.
   *
   * @param isAttack whether by a typical attack
   * @param isProgression whether by progression from onset
   * @param otherIllness whether vascular risk or disease, or a headache disorder, is known
   */
  public record Course(boolean isAttack, boolean isProgression, Answer otherIllness) {
    /** Nothing is said. */
    public static final Course UNKNOWN = new Course(false, false, Answer.UNKNOWN);
  }

  /** Whether a typical attack is the presentation. */
  boolean isAttack() {
    return course.isAttack();
  }

  /**
   * What the limit of the pressure depends on.
   *
   * @param sedated whether sedated
   * @param bmi body mass index, kg/m2
   */
  public record Body(Answer sedated, OptionalDouble bmi) {}
}
