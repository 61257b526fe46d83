package cistern.gel.lanes;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * A lane as a person names it.
 *
 * @param kind what was put on it
 * @param pair the number of its pair, when it was given
 * @param place where it lies, when it was given
 */
public record NamedLane(LaneKind kind, OptionalInt pair, Optional<Place> place) {
  /** A middle at mid-height and a width, in pixels of the picture. */
  public record Place(double xCentre, double width) {}
}
