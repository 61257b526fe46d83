package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Lays the places that a person named on the lanes that were found, by where in a regular row the
 * empty ones lie: a blank should be a gap, and a gap a blank. It is asked when the numbers alone
 * would put names on the wrong lanes, or say nothing.
 *
 * @param uneven how far a distance may be from a whole number of steps, in steps
 * @param blankSeen cost of a blank where a lane is seen
 * @param sampleUnseen cost of a sample or control where no lane is seen
 * @param beyond cost of a lane that no name is left for
 * @param clearness by how much the next best way must cost more
 */
public record Seating(
    double uneven, double blankSeen, double sampleUnseen, double beyond, Clearness clearness) {
  /** Most lanes that are put at an end or left out there. */
  private static final int MOST_AT_END = 3;

  /**
   * How much dearer the next best way must be.
   *
   * @param clear for names to be taken at all
   * @param sure for names that need no further proof
   */
  public record Clearness(double clear, double sure) {}

  /** Lanes with their steps from the first one. */
  private record Row(List<LanePlace> lanes, List<Integer> at) {
    int last() {
      return at.getLast();
    }

    boolean isGapped() {
      return last() + 1 > at.size();
    }

    Optional<LanePlace> lane(int step) {
      int i = Collections.binarySearch(at, step);
      return i < 0 ? Optional.empty() : Optional.of(lanes.get(i));
    }
  }

  /**
   * Whether names laid on the lanes one by one leave a gap where no blank is named, or none where
   * one is.
   */
  public boolean isContradicted(LanePlan plan, List<LanePlace> lanes) {
    Optional<Row> row = row(lanes);
    if (row.isEmpty()) {
      return false;
    }
    return plan.lanes().size() == lanes.size() ? row.get().isGapped() : !isSeated(plan, row.get());
  }

  /** Whether the named lanes without the blanks lie in the row as the plan says. */
  private static boolean isSeated(LanePlan plan, Row row) {
    int first = -1;
    int k = 0;
    for (int i = 0; i < plan.lanes().size(); i++) {
      if (plan.lanes().get(i).kind() != LaneKind.BLANK) {
        first = first < 0 ? i : first;
        if (k >= row.at.size() || row.at.get(k) != i - first) {
          return false;
        }
        k++;
      }
    }
    return k == row.at.size();
  }

  /** As many lanes as were named, empty ones among them, if one way is clearly the best. */
  public Optional<Gaps.Filled> seat(LanePlan plan, List<LanePlace> lanes) {
    Optional<Row> found = row(lanes);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Row row = found.get();
    int slack = row.last() + 1 - plan.lanes().size();
    double best = Double.MAX_VALUE;
    double second = Double.MAX_VALUE;
    int offset = 0;
    for (int o = Math.min(0, slack) - MOST_AT_END; o <= Math.max(0, slack) + MOST_AT_END; o++) {
      double cost = cost(plan, row, o);
      if (cost < best) {
        second = best;
        best = cost;
        offset = o;
      } else {
        second = Math.min(second, cost);
      }
    }
    boolean isFit = isFit(plan, row, offset) && second - best >= clearness.clear;
    boolean isSure = second - best >= clearness.sure;
    return isFit
        ? Optional.of(new Gaps.Filled(places(row, offset, plan.lanes().size()), isSure))
        : Optional.empty();
  }

  /** Whether no more than a few lanes are put or left out at an end. */
  private static boolean isFit(LanePlan plan, Row row, int offset) {
    int end = offset + plan.lanes().size() - 1;
    return Math.abs(offset) <= MOST_AT_END && Math.abs(end - row.last()) <= MOST_AT_END;
  }

  /**
   * @param offset step of the row at which the first named place lies
   */
  private double cost(LanePlan plan, Row row, int offset) {
    double cost = 0;
    int n = plan.lanes().size();
    for (int j = 0; j < n; j++) {
      boolean isBlank = plan.lanes().get(j).kind() == LaneKind.BLANK;
      boolean isSeen = row.lane(offset + j).isPresent();
      if (isBlank == isSeen) {
        cost += isBlank ? blankSeen : sampleUnseen;
      }
    }
    for (int step : row.at) {
      cost += step < offset || step >= offset + n ? beyond : 0;
    }
    return cost;
  }

  private Optional<Row> row(List<LanePlace> lanes) {
    if (lanes.size() < 3) {
      return Optional.empty();
    }
    double step = Gaps.step(lanes);
    List<Integer> at = new ArrayList<>(List.of(0));
    for (int i = 1; i < lanes.size(); i++) {
      double steps = (lanes.get(i).xCentre() - lanes.get(i - 1).xCentre()) / step;
      int whole = Math.max(1, (int) Math.round(steps));
      if (Math.abs(steps - whole) > uneven) {
        return Optional.empty();
      }
      at.add(at.getLast() + whole);
    }
    return Optional.of(new Row(lanes, at));
  }

  /** So many places from a step on; one without a lane lies between or beyond its neighbours. */
  private static List<LanePlace> places(Row row, int first, int count) {
    List<LanePlace> places = new ArrayList<>();
    for (int j = 0; j < count; j++) {
      int step = first + j;
      places.add(row.lane(step).orElseGet(() -> between(row, step)));
    }
    return List.copyOf(places);
  }

  private static LanePlace between(Row row, int step) {
    int i = -1 - Collections.binarySearch(row.at, step);
    int to = Math.clamp(i, 1, row.at.size() - 1);
    LanePlace a = row.lanes.get(to - 1);
    LanePlace b = row.lanes.get(to);
    double share = (double) (step - row.at.get(to - 1)) / (row.at.get(to) - row.at.get(to - 1));
    return new LanePlace(
        a.xCentre() + share * (b.xCentre() - a.xCentre()),
        0.5 * (a.width() + b.width()),
        a.slope() + share * (b.slope() - a.slope()));
  }
}
