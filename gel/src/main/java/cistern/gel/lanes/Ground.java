package cistern.gel.lanes;

/** The local ground of a row of densities: what lies between the lanes, followed across them. */
final class Ground {
  private Ground() {}

  /**
   * The row above its ground: the ground is the running least value over a window, then the running
   * greatest of that (an opening by a flat segment), smoothed by a running mean.
   *
   * @param range first column and one past the last column that count; outside the result is 0
   * @param reach half the window in columns, wider than half a lane
   * @param isWide whether lanes may be wider than half a window; a whole one is then seen at the
   *     ends too, where the light may fall off
   */
  static float[] flatten(float[] row, int[] range, int reach, boolean isWide) {
    float[] inner = java.util.Arrays.copyOfRange(row, range[0], range[1]);
    float[] soft = mean(inner, 2);
    float[] eroded = extreme(soft, reach, true);
    float[] least = isWide ? evenAtEnds(eroded, reach) : eroded;
    float[] ground = mean(extreme(least, reach, false), reach / 2);
    float[] flat = new float[row.length];
    for (int x = 0; x < inner.length; x++) {
      flat[range[0] + x] = Math.max(0, inner[x] - ground[x]);
    }
    return flat;
  }

  /** Running least or greatest value over 2·reach + 1 columns, by a monotone queue. */
  private static float[] extreme(float[] v, int reach, boolean least) {
    int n = v.length;
    float[] out = new float[n];
    int[] queue = new int[n];
    int head = 0;
    int tail = 0;
    int next = 0;
    for (int x = 0; x < n; x++) {
      while (next < n && next <= x + reach) {
        while (tail > head
            && (least ? v[queue[tail - 1]] >= v[next] : v[queue[tail - 1]] <= v[next])) {
          tail--;
        }
        queue[tail++] = next++;
      }
      while (queue[head] < x - reach) {
        head++;
      }
      out[x] = v[queue[head]];
    }
    return out;
  }

  /**
   * Running values whose window at the ends is the first or last whole one: half a window would see
   * nothing but a lane at the edge, and no ground beside it.
   */
  private static float[] evenAtEnds(float[] v, int reach) {
    int n = v.length;
    int end = Math.min(reach, (n - 1) / 2);
    float[] even = v.clone();
    for (int x = 0; x < end; x++) {
      even[x] = v[end];
      even[n - 1 - x] = v[n - 1 - end];
    }
    return even;
  }

  /** Running mean over 2·reach + 1 columns, shorter at the ends. */
  private static float[] mean(float[] v, int reach) {
    int n = v.length;
    double[] sum = new double[n + 1];
    for (int x = 0; x < n; x++) {
      sum[x + 1] = sum[x] + v[x];
    }
    float[] out = new float[n];
    for (int x = 0; x < n; x++) {
      int from = Math.max(0, x - reach);
      int to = Math.min(n, x + reach + 1);
      out[x] = (float) ((sum[to] - sum[from]) / (to - from));
    }
    return out;
  }
}
