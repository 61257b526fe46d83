package cistern.gel;

import cistern.gel.lanes.Gaps;
import cistern.gel.lanes.LaneFinder;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlace;
import cistern.gel.lanes.LanePlan;
import cistern.gel.lanes.LanePlan.NamedPair;
import cistern.gel.lanes.NamedLane;
import cistern.gel.lanes.Seating;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The lanes that are read, each with its kind and pair, after a person's names were laid on what
 * was found.
 *
 * @param pairs lanes of each pair as indices into the places
 * @param naming how names came to the lanes
 * @param isControlled whether a control is among the names
 * @param difference named and found count, when they differ
 */
record Layout(
    List<LanePlace> places,
    List<LaneKind> kinds,
    List<NamedPair> pairs,
    Naming naming,
    boolean isControlled,
    Optional<Difference> difference) {

  /** How names came to the lanes. */
  enum Naming {
    /** No one named them. */
    NONE,
    /** By names of a person, after the end of the row was guessed at which an empty lane lies. */
    GUESSED,
    /** By names of a person. */
    SURE
  }

  /** The ways to lay names on a row of lanes. */
  record Rows(Gaps gaps, Seating seating) {}

  /** How many lanes were named and how many were found. */
  record Difference(int named, int found) {}

  /** Whether a person named the lanes. */
  boolean isNamed() {
    return naming != Naming.NONE;
  }

  Layout {
    places = List.copyOf(places);
    kinds = List.copyOf(kinds);
    pairs = List.copyOf(pairs);
  }

  /**
   * @param factor pixels of the picture in one of the density
   */
  static Layout of(LanePlan plan, LaneFinder.Found found, int factor, Rows rows) {
    if (plan.isPlaced()) {
      return named(plan, placed(plan, found, factor), Naming.SURE);
    }
    List<LanePlace> places = found.lanes();
    if (plan.isNone()) {
      return neighbours(places);
    }
    LanePlan filled = plan.withoutBlanks();
    boolean isWhole = plan.lanes().size() == places.size();
    boolean isCounted = isWhole || filled.lanes().size() == places.size();
    boolean isContradicted = isCounted && rows.seating.isContradicted(plan, places);
    if (isCounted && !isContradicted) {
      return named(isWhole ? plan : filled, places, Naming.SURE);
    }
    Optional<Gaps.Filled> laid =
        rows.seating
            .seat(plan, places)
            .or(() -> rows.gaps.fill(places, plan.lanes().size(), found.sheet()));
    if (laid.isPresent()) {
      Naming naming = laid.get().isSure() ? Naming.SURE : Naming.GUESSED;
      return named(plan, laid.get().lanes(), naming);
    }
    if (isContradicted) {
      return named(isWhole ? plan : filled, places, Naming.GUESSED);
    }
    List<NamedPair> apart =
        plan.pairs().stream()
            .map(p -> new NamedPair(p.number(), OptionalInt.empty(), OptionalInt.empty()))
            .toList();
    Difference difference = new Difference(plan.lanes().size(), places.size());
    return new Layout(
        places, unknown(places), apart, Naming.SURE, plan.isControlled(), Optional.of(difference));
  }

  private static Layout named(LanePlan plan, List<LanePlace> places, Naming naming) {
    List<LaneKind> kinds = plan.lanes().stream().map(NamedLane::kind).toList();
    return new Layout(places, kinds, plan.pairs(), naming, plan.isControlled(), Optional.empty());
  }

  private static Layout neighbours(List<LanePlace> places) {
    List<NamedPair> pairs = new ArrayList<>();
    for (int i = 0; i < places.size(); i += 2) {
      OptionalInt next = i + 1 < places.size() ? OptionalInt.of(i + 1) : OptionalInt.empty();
      pairs.add(new NamedPair(i / 2, OptionalInt.of(i), next));
    }
    return new Layout(places, unknown(places), pairs, Naming.NONE, false, Optional.empty());
  }

  private static List<LaneKind> unknown(List<LanePlace> places) {
    return places.stream().map(p -> LaneKind.UNKNOWN).toList();
  }

  private static List<LanePlace> placed(LanePlan plan, LaneFinder.Found found, int factor) {
    List<LanePlace> places = new ArrayList<>();
    for (NamedLane lane : plan.lanes()) {
      NamedLane.Place given = lane.place().orElseThrow();
      double centre = (given.xCentre() - 0.5 * (factor - 1)) / factor;
      places.add(new LanePlace(centre, given.width() / factor, found.fan().slopeAt(centre)));
    }
    return places;
  }
}
