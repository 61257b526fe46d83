package cistern.gel.bands;

import cistern.gel.lanes.LanePlace;

/**
 * A straightened lane: its density profile and the filter's answers to it.
 *
 * <p>firstRow: row of the picture at index 0
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
  private final LanePlace place;
  private final int firstRow;
  private final float[] profile;
  private final float[] answer;
  private final float[] noise;
  private final float[][] columns;

  LaneTrace(
      LanePlace place,
      int firstRow,
      float[] profile,
      float[] answer,
      float[] noise,
      float[][] columns) {
    this.place = place;
    this.firstRow = firstRow;
    this.profile = profile;
    this.answer = answer;
    this.noise = noise;
    this.columns = columns;
  }

  LanePlace place() {
    return place;
  }

  int firstRow() {
    return firstRow;
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
