package cistern.puncture.headache;

import cistern.fact.Grounds;
import java.util.List;

/**
 * The risk of headache after the puncture as a band, unvalidated.
 *
 * @param low the least, 0 to 1
 * @param high the most, 0 to 1
 * @param figures the published shares, or the local one, that the band spans
 * @param factors what bears on it, and whether it counts
 * @param label what the band is worth
 * @param grounds what it rests on
 */
public record HeadacheRisk(
    double low,
    double high,
    List<Share> figures,
    List<Factor> factors,
    String label,
    Grounds grounds) {

  /** Copies the lists. */
  public HeadacheRisk {
    figures = List.copyOf(figures);
    factors = List.copyOf(factors);
  }

  /**
   * The share of headaches in one source.
   *
   * @param text in whom
   * @param share 0 to 1
   * @param grounds what it rests on
   */
  public record Share(String text, double share, Grounds grounds) {}

  /**
   * One thing that bears on the risk.
   *
   * @param code the name in files
   * @param term what it is
   * @param state counted or not counted
   * @param note how, or why not
   * @param grounds what it rests on
   */
  public record Factor(String code, String term, State state, String note, Grounds grounds) {}

  /** Whether a factor counts. */
  public enum State {
    COUNTED("counted"),
    NOT_COUNTED("not-counted");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }
}
