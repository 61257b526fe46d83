package cistern.gel.bands;

import cistern.gel.lanes.LanePlace;

/**
 * A straightened lane: its density profile and the filter's answers to it.
 *
 * <p>profile: trimmed mean density across the lane, OD
 *
 * <p>answer: filter answer, OD of a band of the gel's width
 *
 * <p>noise: standard deviation of the answer where nothing lies, OD, row by row
 *
 * <p>columns: the filter's answer in each group of the lane's columns
 */
final class LaneTrace {
  private final Origin origin;
  private final float[] profile;
  private final float[] answer;
  private final float[] noise;
  private final float[][] columns;

  /** The lane that was traced, and the row of the picture at index 0. */
  record Origin(LanePlace place, int firstRow) {}

  LaneTrace(Origin origin, float[] profile, float[] answer, float[] noise, float[][] columns) {
    this.origin = origin;
    this.profile = profile;
    this.answer = answer;
    this.noise = noise;
    this.columns = columns;
  }

  LanePlace place() {
    return origin.place();
  }

  int firstRow() {
    return origin.firstRow();
  }

  float[] profile() {
    return profile;
  }

  float[] answer() {
    return answer;
  }

  float[] noise() {
    return noise;
  }

  float[][] columns() {
    return columns;
  }

  int rows() {
    return profile.length;
  }
}
