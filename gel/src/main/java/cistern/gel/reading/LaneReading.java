package cistern.gel.reading;

import cistern.gel.lanes.LaneKind;
import java.util.List;
import java.util.OptionalInt;

/**
 * One lane as read. Lengths are pixels of the picture; for a gel on its side columns are rows.
 *
 * @param index from the left, 0 first
 * @param pair the pair it belongs to
 * @param xCentre column of its middle at mid-height
 * @param slope columns per row along which it runs
 * @param bands from top to bottom
 * @param isPlaced whether a person gave its place
 */
public record LaneReading(
    int index,
    LaneKind kind,
    OptionalInt pair,
    double xCentre,
    double width,
    double slope,
    Quality quality,
    List<GelProblem> problems,
    List<BandMark> bands,
    boolean isPlaced) {

  /** Copies the lists. */
  public LaneReading {
    problems = List.copyOf(problems);
    bands = List.copyOf(bands);
  }

  /** How far a lane can be trusted. */
  public enum Quality {
    GOOD("good"),
    DOUBTFUL("doubtful"),
    UNREADABLE("unreadable");

    private final String word;

    Quality(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * A band as read.
   *
   * @param y its middle on the lane's middle line
   * @param height full width at half maximum
   * @param strength OD above its ground
   * @param matched index of its counterpart in the other lane of the pair
   * @param probability that it is real
   * @param reason why it is believed, in words
   */
  public record BandMark(
      double y,
      double height,
      double strength,
      OptionalInt matched,
      double probability,
      String reason) {}
}
