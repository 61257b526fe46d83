package cistern.gel.reading;

import cistern.gel.image.Polarity;
import cistern.gel.image.Posture;
import java.util.List;

/**
 * A gel as read from its picture; never more than a proposal until a person has confirmed it.
 *
 * @param picture what was read
 * @param lanes from left to right, or from top to bottom on a gel that lies on its side
 * @param pairs in the order of their numbers
 * @param problems of the whole gel
 */
public record GelReading(
    PictureSeen picture,
    List<LaneReading> lanes,
    List<PairReading> pairs,
    List<GelProblem> problems) {

  /** Copies the lists. */
  public GelReading {
    lanes = List.copyOf(lanes);
    pairs = List.copyOf(pairs);
    problems = List.copyOf(problems);
  }

  /**
   * The picture as it was taken.
   *
   * @param file its name
   * @param width pixels, after orientation
   * @param height pixels, after orientation
   */
  public record PictureSeen(
      String file, int width, int height, Polarity polarity, Posture posture) {}
}
