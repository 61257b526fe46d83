package cistern.gel.membrane;

import cistern.gel.membrane.Sheet.Edge;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntBinaryOperator;

/** Fits the four edges of the area that the surround leaves free; lengths in its own samples. */
final class EdgeFit {
  private final boolean[] surround;
  private final int width;
  private final int height;
  private final double deepest;
  private final double straight;

  EdgeFit(boolean[] surround, int width, int height, double deepest, double straight) {
    this.surround = surround;
    this.width = width;
    this.height = height;
    this.deepest = deepest;
    this.straight = straight;
  }

  Optional<Edge> left() {
    return edge(height, width, (row, depth) -> row * width + depth);
  }

  Optional<Edge> right() {
    return edge(height, width, (row, depth) -> row * width + width - 1 - depth)
        .map(e -> new Edge(width - e.at(), -e.slope()));
  }

  Optional<Edge> top() {
    return edge(width, height, (column, depth) -> depth * width + column);
  }

  Optional<Edge> bottom() {
    return edge(width, height, (column, depth) -> (height - 1 - depth) * width + column)
        .map(e -> new Edge(height - e.at(), -e.slope()));
  }

  /** The line through the depths at which the surround ends, if most of them lie on one. */
  private Optional<Edge> edge(int along, int across, IntBinaryOperator index) {
    double[] depth = new double[along];
    for (int i = 0; i < along; i++) {
      int d = 0;
      while (d < across && surround[index.applyAsInt(i, d)]) {
        d++;
      }
      depth[i] = d;
    }
    int from = along / 8;
    int to = along - from;
    double slope = slope(depth, from, to);
    double[] level = new double[to - from];
    for (int i = from; i < to; i++) {
      level[i - from] = depth[i] - slope * (i - along / 2.0);
    }
    double[] sorted = level.clone();
    Arrays.sort(sorted);
    double at = sorted[sorted.length / 2];
    long near = Arrays.stream(level).filter(v -> Math.abs(v - at) <= 1.5).count();
    boolean isEdge = at >= 1 && at <= deepest * across && near >= straight * level.length;
    return isEdge ? Optional.of(new Edge(at, slope)) : Optional.empty();
  }

  /** Median of the slopes between points half the length apart. */
  private static double slope(double[] depth, int from, int to) {
    int half = (to - from) / 2;
    double[] slopes = new double[half];
    for (int i = 0; i < half; i++) {
      slopes[i] = (depth[from + i + half] - depth[from + i]) / half;
    }
    Arrays.sort(slopes);
    return slopes[half / 2];
  }
}
