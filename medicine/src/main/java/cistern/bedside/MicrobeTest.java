package cistern.bedside;

import cistern.measurement.Compartment;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A test for a microbe.
 *
 * @param test the method, as named in the work-up: {@code gram}, {@code culture}, {@code pcr}
 * @param target what was looked for, if named
 * @param in the fluid
 * @param result what came out
 * @param at when the result came
 */
public record MicrobeTest(
    String test,
    Optional<String> target,
    Compartment in,
    Result result,
    Optional<OffsetDateTime> at) {

  /** What came out. */
  public enum Result {
    POSITIVE("positive"),
    NEGATIVE("negative"),
    PENDING("pending");

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

  /** Whether the method's name holds a word, whatever its capitals. */
  public boolean isMethod(String word) {
    return test.toLowerCase(Locale.ROOT).contains(word);
  }

  /** Whether the target's name holds a word, whatever its capitals. */
  public boolean isFor(String word) {
    return target.filter(t -> t.toLowerCase(Locale.ROOT).contains(word)).isPresent();
  }

  /** The method and what was looked for, in words. */
  public String toText() {
    String method =
        switch (test.toLowerCase(Locale.ROOT)) {
          case "gram" -> "Gram stain";
          case "pcr" -> "PCR";
          case "acid-fast" -> "Acid-fast stain";
          case "tuberculosis-fungi" -> "Test for tuberculosis or fungi";
          default -> test;
        };
    return target.map(t -> method + " (" + t + ")").orElse(method);
  }

  /** Whether it is positive. */
  public boolean isPositive() {
    return result == Result.POSITIVE;
  }
}
