package cistern.gel.reading;

/**
 * Something wrong with a gel, a lane or a pair.
 *
 * @param code what
 * @param text a sentence for a person
 */
public record GelProblem(Code code, String text) {

  /** The catalogue of what can be wrong. */
  public enum Code {
    MISPAIRED_SERUM("mispaired-serum", true),
    LANE_MISSING("lane-missing", true),
    LANE_UNREADABLE("lane-unreadable", true),
    LANE_COUNT_DIFFERS("lane-count-differs", true),
    SATURATED("saturated", false),
    FAINT("faint", false),
    SMEARED("smeared", false),
    TILTED("tilted", false),
    APPLICATION_MARK("application-mark", false),
    LOAD_MISMATCH("load-mismatch", false),
    NO_CONTROLS("no-controls", false);

    private final String word;
    private final boolean isStop;

    Code(String word, boolean isStop) {
      this.word = word;
      this.isStop = isStop;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }

    /** Whether a pair with it has no pattern. */
    public boolean isStop() {
      return isStop;
    }
  }
}
