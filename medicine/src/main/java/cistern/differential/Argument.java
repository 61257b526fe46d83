package cistern.differential;

import cistern.fact.Grounds;
import java.util.List;

/**
 * What speaks for and against a disease that has too few counts for a number.
 *
 * @param disease the disease
 * @param reasonsFor in words
 * @param reasonsAgainst in words
 * @param grounds the counts behind them
 */
public record Argument(
    Disease disease, List<String> reasonsFor, List<String> reasonsAgainst, Grounds grounds) {

  /** Copies the lists. */
  public Argument {
    reasonsFor = List.copyOf(reasonsFor);
    reasonsAgainst = List.copyOf(reasonsAgainst);
  }
}
