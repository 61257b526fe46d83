package cistern.gel.score;

import cistern.gel.lanes.LanePlan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is true of a gel, by its drawing or by a person's careful reading.
 *
 * @param file the picture
 * @param group what its figures are put together with, such as a level of difficulty
 * @param names the lanes as a person names them
 * @param places where the lanes lie that hold something; empty when nobody measured them
 * @param pairs what is true of each pair
 */
public record GelTruth(
    String file, String group, LanePlan names, List<Place> places, List<Pair> pairs) {

  /** Copies the lists. */
  public GelTruth {
    places = List.copyOf(places);
    pairs = List.copyOf(pairs);
  }

  /** A lane's middle at mid-height and its width, pixels. */
  public record Place(double xCentre, double width) {}

  /**
   * A pair.
   *
   * @param pair its number
   * @param csfOnly bands only in the CSF; empty when nobody could or should read the pair
   * @param pattern one of the five, when it is known
   */
  public record Pair(int pair, OptionalInt csfOnly, OptionalInt pattern) {
    /** Whether the pair can be read at all. */
    public boolean isGood() {
      return csfOnly.isPresent();
    }
  }

  /** The truth of a pair. */
  Optional<Pair> pair(int number) {
    return pairs.stream().filter(p -> p.pair == number).findFirst();
  }
}
