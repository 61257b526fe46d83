package cistern.gel;

import cistern.fact.Facts;
import cistern.gel.lanes.FoundLane;
import cistern.gel.lanes.LaneFinder;
import cistern.gel.lanes.LaneFinder.Found;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlan;
import cistern.gel.lanes.LanePlan.NamedPair;
import cistern.gel.lanes.NamedLane;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * The lanes that are read from left to right, each with its kind and pair, after a person's names
 * were laid on what was found.
 *
 * @param lanes where they lie in the plane
 * @param pairs lanes of each pair as indices into the lanes
 * @param isNamed whether a person named the lanes
 * @param isPlaced whether a person gave their places
 * @param isControlled whether a control is among the names
 * @param doubt why the names may lie on the wrong lanes, in words
 * @param difference named and found count, when they differ
 */
record Layout(
    List<FoundLane> lanes,
    List<LaneKind> kinds,
    List<NamedPair> pairs,
    boolean isNamed,
    boolean isPlaced,
    boolean isControlled,
    Optional<String> doubt,
    Optional<Difference> difference) {

  private static final String OTHER_WAY =
      "the names could be laid on the row of lanes in another way";

  /** How many lanes were named and how many were found. */
  record Difference(int named, int found) {}

  Layout {
    lanes = List.copyOf(lanes);
    kinds = List.copyOf(kinds);
    pairs = List.copyOf(pairs);
  }

  static Layout of(LanePlan plan, View view, Facts facts) {
    if (plan.isPlaced()) {
      return named(plan, placed(plan, view), Optional.empty());
    }
    List<FoundLane> unaided = inOrder(view.lanes().unaided().lanes(), view);
    return plan.isNone() ? neighbours(unaided) : laid(plan, view, facts, unaided);
  }

  private static List<FoundLane> inOrder(List<FoundLane> lanes, View view) {
    return view.stance().isMirrored() ? lanes.reversed() : lanes;
  }

  private static List<FoundLane> placed(LanePlan plan, View view) {
    List<FoundLane> lanes = new ArrayList<>();
    for (NamedLane lane : plan.lanes()) {
      NamedLane.Place given = lane.place().orElseThrow();
      double column = view.toPlane(given.xCentre());
      double width = given.width() / view.factor();
      lanes.add(view.lanes().placed(column, width, view.middleRow()));
    }
    return lanes;
  }

  /** The names laid with the blanks and without, whichever the picture bears out. */
  private static Layout laid(LanePlan plan, View view, Facts facts, List<FoundLane> unaided) {
    LanePlan filled = plan.withoutBlanks();
    boolean isBlank = filled.lanes().size() < plan.lanes().size() && !filled.isNone();
    Optional<Found> whole = fit(plan, view);
    Optional<Found> apart = isBlank ? fit(filled, view) : Optional.empty();
    boolean isApart =
        apart.isPresent() && (whole.isEmpty() || apart.get().worth() > whole.get().worth());
    LanePlan used = isApart ? filled : plan;
    Optional<Found> found = isApart ? apart : whole;
    List<FoundLane> lanes = found.map(f -> inOrder(f.lanes(), view)).orElse(List.of());
    CountCheck check = new CountCheck(used, lanes, unaided, facts);
    boolean isPinned =
        found.isPresent() && found.get().clearness() >= facts.number("gel.row.clear");
    if (found.isEmpty()
        || check.isNameMissing()
        || check.isMostlyUnseen()
        || (!isPinned && check.isLaneMissing())) {
      return inTurn(plan, filled, unaided);
    }
    boolean isClear = isPinned && !isApart && !check.isDoubtful();
    return named(used, lanes, isClear ? Optional.empty() : Optional.of(OTHER_WAY));
  }

  /**
   * The lanes that were found take the names in turn, where there are as many, and with a doubt.
   */
  private static Layout inTurn(LanePlan plan, LanePlan filled, List<FoundLane> unaided) {
    return Stream.of(plan, filled)
        .filter(p -> p.lanes().size() == unaided.size())
        .findFirst()
        .map(p -> named(p, unaided, Optional.of(OTHER_WAY)))
        .orElseGet(() -> different(plan, unaided));
  }

  private static Optional<Found> fit(LanePlan plan, View view) {
    LaneFinder finder = view.lanes();
    return finder.named(view.stance().isMirrored() ? plan.reversed() : plan);
  }

  private static Layout different(LanePlan plan, List<FoundLane> unaided) {
    List<NamedPair> apart =
        plan.pairs().stream()
            .map(p -> new NamedPair(p.number(), OptionalInt.empty(), OptionalInt.empty()))
            .toList();
    return new Layout(
        unaided,
        unknown(unaided),
        apart,
        true,
        false,
        plan.isControlled(),
        Optional.empty(),
        Optional.of(new Difference(plan.lanes().size(), unaided.size())));
  }

  private static Layout named(LanePlan plan, List<FoundLane> lanes, Optional<String> doubt) {
    List<LaneKind> kinds = plan.lanes().stream().map(NamedLane::kind).toList();
    return new Layout(
        lanes,
        kinds,
        plan.pairs(),
        true,
        plan.isPlaced(),
        plan.isControlled(),
        doubt,
        Optional.empty());
  }

  /** Neighbours paired from the left, or from the second lane where the steps say so clearly. */
  private static Layout neighbours(List<FoundLane> lanes) {
    int first = lanes.size() > 3 && isOdd(lanes) ? 1 : 0;
    List<NamedPair> pairs = new ArrayList<>();
    if (first == 1) {
      pairs.add(new NamedPair(0, OptionalInt.of(0), OptionalInt.empty()));
    }
    for (int i = first; i < lanes.size(); i += 2) {
      OptionalInt next = i + 1 < lanes.size() ? OptionalInt.of(i + 1) : OptionalInt.empty();
      pairs.add(new NamedPair(pairs.size(), OptionalInt.of(i), next));
    }
    return new Layout(
        lanes, unknown(lanes), pairs, false, false, false, Optional.empty(), Optional.empty());
  }

  /** Whether the steps from every second lane on, the second first, are clearly the shorter. */
  private static boolean isOdd(List<FoundLane> lanes) {
    double[] sum = new double[2];
    int[] count = new int[2];
    for (int i = 0; i + 1 < lanes.size(); i++) {
      FoundLane a = lanes.get(i);
      double row = 0.5 * (a.course().firstRow() + a.course().lastRow());
      sum[i % 2] += Math.abs(lanes.get(i + 1).course().at(row) - a.course().at(row));
      count[i % 2]++;
    }
    return sum[1] / count[1] < 0.85 * sum[0] / count[0];
  }

  private static List<LaneKind> unknown(List<FoundLane> lanes) {
    return lanes.stream().map(p -> LaneKind.UNKNOWN).toList();
  }
}
