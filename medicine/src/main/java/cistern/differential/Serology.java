package cistern.differential;

import cistern.measurement.Compartment;
import java.util.Arrays;
import java.util.Optional;

/**
 * The result of a test for one antibody.
 *
 * @param test the test, as named in the work-up
 * @param in the fluid
 * @param result what came out
 */
public record Serology(String test, Compartment in, Result result) {

  /** The test for antibodies against MOG. */
  public static final String MOG_IGG = "mog-igg";

  /** The test for antibodies against aquaporin-4. */
  public static final String AQP4_IGG = "aqp4-igg";

  /** What came out. */
  public enum Result {
    POSITIVE("positive"),
    NEGATIVE("negative"),
    BORDERLINE("borderline"),
    UNKNOWN("unknown");

    private final String word;

    Result(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }

    /** The result of a word, if it is one. */
    public static Optional<Result> parse(String word) {
      return Arrays.stream(values()).filter(r -> r.word.equals(word)).findFirst();
    }
  }

  /** Whether it is this test in serum, with a definite result. */
  boolean isDecided(String name) {
    return test.equals(name)
        && in == Compartment.SERUM
        && (result == Result.POSITIVE || result == Result.NEGATIVE);
  }

  /** Whether it is this test, positive in serum. */
  public boolean isPositive(String name) {
    return isDecided(name) && result == Result.POSITIVE;
  }
}
