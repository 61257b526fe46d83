package cistern.gel.lanes;

import cistern.gel.net.LaneMaps;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Finds lanes in what the net says of a picture. */
public final class LaneFinder {
  private static final double SEEN = 0.3;
  private static final double APART = 0.75;
  private static final double CORE_WIDTH = 0.7;
  private static final double ROW_SEEN = 0.3;
  private static final int POINTS = 9;

  /** How far from a place that a person gave the same lane may be seen, in its widths. */
  private static final double NEAR = 0.25;

  /** Share of what the usual lane holds under which a lane counts for less, and for how much. */
  private static final double LITTLE = 0.3;

  private static final double EMPTY = 0.5;

  private final LaneMaps maps;
  private final Shear shear;
  private final double[] profile;
  private final double width;
  private final int top;
  private final int bottom;

  private LaneFinder(LaneMaps maps, Shear shear, int[] rows) {
    this.maps = maps;
    this.shear = shear;
    this.top = rows[0];
    this.bottom = rows[1];
    this.profile = shear.profile(maps, maps::middle, top, bottom + 1);
    this.width = width(profile, shear.profile(maps, maps::core, top, bottom + 1));
  }

  private LaneFinder(LaneFinder other, double[] profile) {
    this.maps = other.maps;
    this.shear = other.shear;
    this.top = other.top;
    this.bottom = other.bottom;
    this.profile = profile;
    this.width = other.width;
  }

  /** This finder, to which a lane counts for less that holds far less than the usual one. */
  public LaneFinder weighed(ToDoubleFunction<FoundLane> content) {
    List<Integer> columns = seen();
    double[] held = columns.stream().map(this::lane).mapToDouble(content).toArray();
    double[] sorted = held.clone();
    Arrays.sort(sorted);
    double[] weighed = profile.clone();
    for (int i = 0; i < held.length; i++) {
      double share = held[i] / (LITTLE * sorted[sorted.length / 2] + 1e-9);
      double weight = EMPTY + (1 - EMPTY) * Math.min(1, share);
      int from = (int) Math.max(0, columns.get(i) - width / 2);
      for (int x = from; x < Math.min(profile.length, columns.get(i) + width / 2); x++) {
        weighed[x] = profile[x] * weight;
      }
    }
    return new LaneFinder(this, weighed);
  }

  /**
   * Lanes of a gel.
   *
   * @param lanes from left to right
   * @param worth of the whole row
   * @param clearness by how much the row beats the next best way to lay it; large when there was no
   *     choice
   */
  public record Found(List<FoundLane> lanes, double worth, double clearness) {
    /** Copies the list. */
    public Found {
      lanes = List.copyOf(lanes);
    }
  }

  /** A finder in some maps. */
  public static LaneFinder of(LaneMaps maps) {
    Shear shear = Shear.of(maps);
    return new LaneFinder(maps, shear, rows(shear.rows(maps, maps::core)));
  }

  /** The rows over which lanes run: those on which enough of them is seen. */
  private static int[] rows(double[] sums) {
    double[] sorted = sums.clone();
    Arrays.sort(sorted);
    int quarter = Math.max(1, sorted.length / 4);
    double mean = Arrays.stream(sorted, sorted.length - quarter, sorted.length).average().orElse(0);
    List<Integer> seen = new ArrayList<>();
    for (int y = 0; y < sums.length; y++) {
      if (sums[y] > ROW_SEEN * mean) {
        seen.add(y);
      }
    }
    if (seen.size() < 4) {
      return new int[] {0, sums.length - 1};
    }
    int last = seen.size() - 1;
    int first = seen.get((int) (0.01 * last));
    return new int[] {first, Math.max(first + 1, seen.get((int) Math.ceil(0.99 * last)))};
  }

  /** The lanes' width: where the lane itself falls to one half, the median. */
  private static double width(double[] middles, double[] cores) {
    double[] widths =
        peaks(middles, 0.25).stream().mapToDouble(x -> across(cores, x)).sorted().toArray();
    return widths.length == 0 ? middles.length / 20.0 : widths[widths.length / 2] / CORE_WIDTH;
  }

  private static double across(double[] cores, int at) {
    double half = cores[at] / 2;
    int left = at;
    while (left > 0 && cores[left] > half) {
      left--;
    }
    int right = at;
    while (right < cores.length - 1 && cores[right] > half) {
      right++;
    }
    return Math.max(1, right - left - 1);
  }

  private static List<Integer> peaks(double[] profile, double least) {
    List<Integer> peaks = new ArrayList<>();
    for (int x = 1; x + 1 < profile.length; x++) {
      if (profile[x] > least && profile[x] >= profile[x - 1] && profile[x] > profile[x + 1]) {
        peaks.add(x);
      }
    }
    return peaks;
  }

  /** How clearly lanes are seen at all: the mean of the two clearest. */
  public double clarity() {
    double[] heights = peaks(profile, 0).stream().mapToDouble(x -> profile[x]).sorted().toArray();
    int n = heights.length;
    return n < 2 ? 0 : 0.5 * (heights[n - 1] + heights[n - 2]);
  }

  /** The lanes that are seen, nobody having named any. */
  public Found unaided() {
    return new Found(seen().stream().map(this::lane).toList(), 0, Double.MAX_VALUE);
  }

  private List<Integer> seen() {
    List<Integer> kept = new ArrayList<>();
    List<Integer> peaks = new ArrayList<>(peaks(profile, SEEN));
    peaks.sort(Comparator.comparingDouble(x -> -profile[x]));
    for (int x : peaks) {
      if (kept.stream().allMatch(k -> Math.abs(k - x) > APART * width)) {
        kept.add(x);
      }
    }
    kept.sort(Comparator.naturalOrder());
    return kept.stream().filter(x -> !isSqueezed(x, kept)).toList();
  }

  /** Whether what is seen lies between two clearer lanes that leave no room for a third. */
  private boolean isSqueezed(int x, List<Integer> kept) {
    return isBeside(x, kept, -1) && isBeside(x, kept, 1);
  }

  private boolean isBeside(int x, List<Integer> kept, int side) {
    return kept.stream()
        .anyMatch(k -> (k - x) * side > 0 && (k - x) * side < width && profile[k] >= profile[x]);
  }

  /** The lanes of a row that a person named; those for blanks are among them. */
  public Optional<Found> named(LanePlan plan) {
    RowFit fit = new RowFit(profile, plan.lanes(), plan.pairNumbers());
    return fit.best(width)
        .map(
            laid ->
                new Found(
                    laid.columns().stream().map(this::lane).toList(),
                    laid.worth(),
                    fit.clearness(laid, width)));
  }

  /**
   * The lane at a place that a person gave, in pixels of the picture. Where a lane is seen there it
   * bends as that one does, so that giving the place of a found lane changes nothing.
   */
  public FoundLane placed(double column, double laneWidth, double middleRow) {
    double[] line = straight((column + 0.5) * maps.scale() - 0.5);
    Course seen = course(bent(line));
    boolean isSeen = Math.abs(seen.at(middleRow) - column) < NEAR * laneWidth;
    Course course = isSeen ? seen : course(line);
    return new FoundLane(course.moved(column - course.at(middleRow)), laneWidth, 1);
  }

  private FoundLane lane(int column) {
    double[] line = straight(column);
    return new FoundLane(course(bent(line)), width / maps.scale(), profile[column]);
  }

  private double row(int point) {
    return top + (bottom - top) * point / (POINTS - 1.0);
  }

  private double[] straight(double column) {
    double[] line = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      line[i] = shear.at(maps, column, row(i));
    }
    return line;
  }

  /** A line bent to where the net sees the lane's middle, by a parabola. */
  private double[] bent(double[] line) {
    double[] off = new double[POINTS];
    double[] weight = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      middle(line[i], row(i), i, off, weight);
    }
    boolean isLong = bottom - top > 40;
    double[] bend = Parabola.fit(off, weight, isLong);
    double[] bent = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      bent[i] = line[i] + Parabola.at(bend, i);
    }
    return bent;
  }

  /** How far the net's middle lies from a place nearby, and how clearly it is seen. */
  private void middle(double column, double row, int i, double[] off, double[] weight) {
    double reach = Math.max(2, 0.4 * width);
    int from = (int) Math.max(0, column - reach);
    int to = (int) Math.min(maps.width() - 1, column + reach);
    int half = (bottom - top) / 14;
    int first = (int) Math.max(0, row - half);
    int last = (int) Math.min(maps.height() - 1, row + half);
    double sum = 0;
    double moment = 0;
    for (int y = first; y <= last; y++) {
      for (int x = from; x <= to; x++) {
        sum += maps.middle(x, y);
        moment += maps.middle(x, y) * (x - column);
      }
    }
    off[i] = sum > 1e-3 ? moment / sum : 0;
    weight[i] = Math.min(1, sum / ((last - first + 1) * 0.25 * width + 1e-6)) + 0.02;
  }

  private Course course(double[] line) {
    double[] columns = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      columns[i] = (line[i] + 0.5) / maps.scale() - 0.5;
    }
    return new Course(pixels(top), pixels(bottom), columns);
  }

  private double pixels(double row) {
    return (row + 0.5) / maps.scale() - 0.5;
  }
}
