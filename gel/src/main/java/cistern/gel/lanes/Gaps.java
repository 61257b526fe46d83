package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Places in a regular row of lanes where a lane stays out: nothing visible was put there, or it did
 * not take. They are looked for only when more lanes are named than were found.
 *
 * @param uneven how far a gap may be from a whole number of steps, in steps
 * @param room how much more bare membrane there must be at one end than at the other, in steps
 */
public record Gaps(double uneven, double room) {

  /**
   * Lanes with empty ones among them.
   *
   * @param isSure whether all empty ones lie between others
   */
  public record Filled(List<LanePlace> lanes, boolean isSure) {
    /** Copies the lanes. */
    public Filled {
      lanes = List.copyOf(lanes);
    }
  }

  /**
   * As many lanes as were named, if they can be had in one way only: by an empty lane in each gap,
   * and by one more at the end that has more bare membrane, since rows of lanes are centred.
   */
  public Optional<Filled> fill(List<LanePlace> lanes, int named, Extent sheet) {
    if (lanes.size() < 3) {
      return Optional.empty();
    }
    List<LanePlace> filled = between(lanes);
    if (filled.size() == named - 1) {
      return atEnd(filled, sheet).map(f -> new Filled(f, false));
    }
    return filled.size() == named ? Optional.of(new Filled(filled, true)) : Optional.empty();
  }

  private static double step(List<LanePlace> lanes) {
    double[] steps = new double[lanes.size() - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = lanes.get(i + 1).xCentre() - lanes.get(i).xCentre();
    }
    Arrays.sort(steps);
    return steps[(steps.length - 1) / 2];
  }

  /** The lanes with an empty one in each gap; the same lanes when the row is not regular. */
  private List<LanePlace> between(List<LanePlace> lanes) {
    double step = step(lanes);
    List<LanePlace> filled = new ArrayList<>();
    filled.add(lanes.getFirst());
    for (int i = 0; i + 1 < lanes.size(); i++) {
      LanePlace from = lanes.get(i);
      LanePlace to = lanes.get(i + 1);
      double steps = (to.xCentre() - from.xCentre()) / step;
      int whole = Math.max(1, (int) Math.round(steps));
      if (Math.abs(steps - whole) > uneven) {
        return lanes;
      }
      for (int k = 1; k < whole; k++) {
        filled.add(at(from, to, (double) k / whole));
      }
      filled.add(to);
    }
    return List.copyOf(filled);
  }

  private Optional<List<LanePlace>> atEnd(List<LanePlace> lanes, Extent sheet) {
    double step = step(lanes);
    LanePlace first = lanes.getFirst();
    LanePlace last = lanes.getLast();
    double left = first.xCentre() - sheet.from();
    double right = sheet.to() - last.xCentre();
    if (Math.max(left, right) < step + first.width() / 2 || Math.abs(left - right) < room * step) {
      return Optional.empty();
    }
    List<LanePlace> filled = new ArrayList<>(lanes);
    double share = step / (last.xCentre() - first.xCentre());
    if (left > right) {
      filled.addFirst(at(first, last, -share));
    } else {
      filled.addLast(at(first, last, 1 + share));
    }
    return Optional.of(List.copyOf(filled));
  }

  private static LanePlace at(LanePlace from, LanePlace to, double share) {
    return new LanePlace(
        from.xCentre() + share * (to.xCentre() - from.xCentre()),
        from.width() + share * (to.width() - from.width()),
        from.slope() + share * (to.slope() - from.slope()));
  }
}
