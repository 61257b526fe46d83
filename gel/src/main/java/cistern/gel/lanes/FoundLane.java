package cistern.gel.lanes;

/**
 * A lane in the picture.
 *
 * @param course its middle line, pixels
 * @param width pixels
 * @param seen how clearly the picture shows it, from 0 to 1
 */
public record FoundLane(Course course, double width, double seen) {

  /** Its place at a row, which is the picture's mid-height. */
  public LanePlace place(double row) {
    return new LanePlace(course.at(row), width, course.slope());
  }
}
