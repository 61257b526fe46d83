package cistern.gel.lanes;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Places in a regular row of lanes where a lane stays out: nothing visible was put there, or it did
 * not take. They are looked for only when another number of lanes is named than was found.
 *
 * @param uneven how far a gap may be from a whole number of steps, in steps
 * @param room by how much the next best way must be out of balance, in steps
 */
public record Gaps(double uneven, double room) {
  /** Most empty lanes at the ends of the row, and most lanes there that are none. */
  private static final int MOST_ADDED = 2;

  private static final int MOST_DROPPED = 1;

  /** Share of half a lane for which there must be room at the edge, which is known that well. */
  private static final double SEEN = 0.6;

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
   * and by more or fewer at the ends, so that as much bare membrane is left on either side.
   */
  public Optional<Filled> fill(List<LanePlace> lanes, int named, Extent sheet) {
    if (lanes.size() < 3) {
      return Optional.empty();
    }
    List<LanePlace> filled = between(lanes);
    int more = named - filled.size();
    if (more == 0) {
      return Optional.of(new Filled(filled, true));
    }
    boolean isFew = more >= -MOST_DROPPED && more <= MOST_ADDED;
    return isFew ? balanced(filled, more, sheet).map(f -> new Filled(f, false)) : Optional.empty();
  }

  /** The usual distance from a lane to the next, pixels. */
  static double step(List<LanePlace> lanes) {
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

  /** The lanes with so many more at the ends that the row lies in the middle of the membrane. */
  private Optional<List<LanePlace>> balanced(List<LanePlace> lanes, int more, Extent sheet) {
    double step = step(lanes);
    double left = (lanes.getFirst().xCentre() - sheet.from()) / step;
    double right = (sheet.to() - lanes.getLast().xCentre()) / step;
    double half = SEEN * lanes.getFirst().width() / 2 / step;
    double best = Double.MAX_VALUE;
    double second = Double.MAX_VALUE;
    int atLeft = 0;
    for (int i = Math.min(0, more); i <= Math.max(0, more); i++) {
      double off = Math.abs(left - i - (right - (more - i)));
      boolean isRoom = left - i >= half && right - (more - i) >= half;
      if (isRoom && off < best) {
        second = best;
        best = off;
        atLeft = i;
      } else {
        second = Math.min(second, off);
      }
    }
    return best < Double.MAX_VALUE && second - best >= room
        ? Optional.of(withEnds(lanes, atLeft, more - atLeft, step))
        : Optional.empty();
  }

  private static List<LanePlace> withEnds(
      List<LanePlace> lanes, int atLeft, int atRight, double step) {
    LanePlace first = lanes.getFirst();
    LanePlace last = lanes.getLast();
    double share = step / (last.xCentre() - first.xCentre());
    List<LanePlace> filled =
        new ArrayList<>(lanes.subList(Math.max(0, -atLeft), lanes.size() - Math.max(0, -atRight)));
    for (int i = 1; i <= atLeft; i++) {
      filled.addFirst(at(first, last, -i * share));
    }
    for (int i = 1; i <= atRight; i++) {
      filled.addLast(at(first, last, 1 + i * share));
    }
    return List.copyOf(filled);
  }

  private static LanePlace at(LanePlace from, LanePlace to, double share) {
    return new LanePlace(
        from.xCentre() + share * (to.xCentre() - from.xCentre()),
        from.width() + share * (to.width() - from.width()),
        from.slope() + share * (to.slope() - from.slope()));
  }
}
