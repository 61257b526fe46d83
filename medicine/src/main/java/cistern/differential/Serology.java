package cistern.differential;

import cistern.measurement.Compartment;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The result of a test for one antibody.
 *
 * @param test the test, as named in the work-up
 * @param in the fluid
 * @param result what came out
 * @param method how the antibody was looked for
 * @param titre as written, {@code 1:100}
 */
public record Serology(
    String test, Compartment in, Result result, Method method, Optional<String> titre) {

  private static final Pattern RATIO = Pattern.compile("1[:/](\\d{1,9})");

  /** A test of which neither method nor titre is said. */
  public Serology(String test, Compartment in, Result result) {
    this(test, in, result, Method.UNKNOWN, Optional.empty());
  }

  /** How an antibody was looked for. */
  public enum Method {
    CELL_BASED("cell-based"),
    ELISA("elisa"),
    UNKNOWN("unknown");

    private final String word;

    Method(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }

    /** The method of a word, if it is one. */
    public static Optional<Method> parse(String word) {
      return Arrays.stream(values()).filter(m -> m.word.equals(word)).findFirst();
    }
  }

  /** The dilution of the titre, 100 for {@code 1:100}, if it is written so. */
  public OptionalInt dilution() {
    Optional<Matcher> ratio =
        titre.map(t -> t.replaceAll("[.,\\s]", "")).map(RATIO::matcher).filter(Matcher::find);
    return ratio.isPresent()
        ? OptionalInt.of(Integer.parseInt(ratio.get().group(1)))
        : OptionalInt.empty();
  }

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

  /** Whether a titre is named that lies under a dilution: too low to lean on. */
  public boolean isUnder(double titre) {
    OptionalInt named = dilution();
    return named.isPresent() && named.getAsInt() < titre;
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
