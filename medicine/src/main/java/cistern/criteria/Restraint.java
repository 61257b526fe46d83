package cistern.criteria;

import java.util.List;

/**
 * What holds the criteria back before any row is read.
 *
 * @param isContradicted whether something waits for an explanation: both editions are undetermined
 *     until somebody says that none is better
 * @param isBandsUnknown whether the bands cannot be used
 * @param isKappaUnknown whether the κ index cannot be used
 * @param kappaRaisedAlsoBy what else raises the κ index, in words; empty when nothing does
 */
public record Restraint(
    boolean isContradicted,
    boolean isBandsUnknown,
    boolean isKappaUnknown,
    List<String> kappaRaisedAlsoBy) {

  /** Nothing holds them back. */
  public static final Restraint NONE = new Restraint(false, false, false, List.of());

  /** Copies the list. */
  public Restraint {
    kappaRaisedAlsoBy = List.copyOf(kappaRaisedAlsoBy);
  }
}
