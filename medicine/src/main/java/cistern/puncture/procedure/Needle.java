package cistern.puncture.procedure;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The needle that is planned or was used.
 *
 * @param tip its kind
 * @param gauge its gauge, if stated
 */
public record Needle(Tip tip, OptionalInt gauge) {

  /** A needle of which nothing is known. */
  public static final Needle UNKNOWN = new Needle(Tip.UNKNOWN, OptionalInt.empty());

  /** The kind of tip. */
  public enum Tip {
    ATRAUMATIC("atraumatic"),
    CUTTING("cutting"),
    UNKNOWN("unknown");

    private final String code;

    Tip(String code) {
      this.code = code;
    }

    /** The name in files and in the keys of facts. */
    public String code() {
      return code;
    }

    /** The tip of a name, if it is one. */
    public static Optional<Tip> parse(String code) {
      return Arrays.stream(values()).filter(t -> t.code.equals(code)).findFirst();
    }
  }
}
