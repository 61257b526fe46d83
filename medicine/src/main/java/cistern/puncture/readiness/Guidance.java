package cistern.puncture.readiness;

import cistern.fact.Grounds;
import java.util.List;
import java.util.Optional;

/**
 * How to find the way: landmarks, or imaging because of something.
 *
 * @param method what is considered
 * @param reasons the difficulties recorded
 * @param open the difficulties nobody has asked about
 * @param depth how far the fluid is, when known
 * @param advice sentences with what they rest on
 * @param doses what X-ray guidance costs
 */
public record Guidance(
    Method method,
    List<String> reasons,
    List<String> open,
    Optional<Depth> depth,
    List<Advice> advice,
    List<Dose> doses) {

  /** Copies the lists. */
  public Guidance {
    reasons = List.copyOf(reasons);
    open = List.copyOf(open);
    advice = List.copyOf(advice);
    doses = List.copyOf(doses);
  }

  /** The way that is considered. */
  public enum Method {
    LANDMARKS("landmarks"),
    ULTRASOUND("ultrasound"),
    ULTRASOUND_OR_FLUOROSCOPY("ultrasound-or-fluoroscopy");

    private final String word;

    Method(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * How far the fluid is.
   *
   * @param cm from skin to CSF, cm
   * @param isMeasured on images, else computed from the BMI for the oblique route
   * @param isDeep over the length that many needles reach
   * @param grounds what it rests on
   */
  public record Depth(double cm, boolean isMeasured, boolean isDeep, Grounds grounds) {}

  /**
   * One sentence.
   *
   * @param code the name in files
   * @param text the sentence
   * @param grounds what it rests on
   */
  public record Advice(String code, String text, Grounds grounds) {}

  /**
   * An effective dose.
   *
   * @param method of X-ray guidance
   * @param mean mSv
   * @param lower mSv
   * @param upper mSv
   * @param grounds what it rests on
   */
  public record Dose(String method, double mean, double lower, double upper, Grounds grounds) {}
}
