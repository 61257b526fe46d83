package cistern.followup;

import cistern.analysis.Puncture;
import cistern.finding.UnitProfile;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Punctures of one person, each against the one before.
 *
 * @param person whose they are, when all say the same
 * @param punctures in order of time
 * @param days from the first to the last, when both times are known
 * @param steps one a pair of neighbours
 * @param remarks what it means, comparability first
 */
public record Comparison(
    Optional<String> person,
    List<Puncture> punctures,
    OptionalDouble days,
    List<Step> steps,
    List<Remark> remarks) {

  /** Copies the lists. */
  public Comparison {
    punctures = List.copyOf(punctures);
    steps = List.copyOf(steps);
    remarks = List.copyOf(remarks);
  }

  /**
   * The units in which all punctures are written: their laboratory's where it is the same for all.
   *
   * @param house the units of the house, where laboratories differ: a row never mixes two
   */
  public UnitProfile units(UnitProfile house) {
    List<UnitProfile> all = punctures.stream().map(Puncture::units).distinct().toList();
    return all.size() == 1 ? all.getFirst() : house;
  }

  /**
   * Two neighbours.
   *
   * @param earlier the first
   * @param later the second
   * @param days between them, when both times are known
   * @param changes every value that stands in at least one of them
   * @param bands what became of the bands
   */
  public record Step(
      Puncture earlier,
      Puncture later,
      OptionalDouble days,
      List<Change> changes,
      BandChange bands) {
    /** Copies the changes. */
    public Step {
      changes = List.copyOf(changes);
    }
  }
}
