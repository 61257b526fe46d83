package cistern.gel.synthetic;

import java.util.List;

/** One lane of an invented gel: its place in the picture and the heights at which bands lie. */
public record LaneTruth(String kind, int pair, double xCentre, double width, List<Double> bandY) {
  public LaneTruth {
    bandY = List.copyOf(bandY);
  }
}
