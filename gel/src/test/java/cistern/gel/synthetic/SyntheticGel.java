package cistern.gel.synthetic;

import cistern.gel.image.Picture;
import cistern.gel.lanes.LaneKind;
import cistern.gel.lanes.LanePlan;
import cistern.gel.lanes.NamedLane;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** An invented gel: intensities in 0…1 row by row, and its ground truth. */
public final class SyntheticGel {
  private final int width;
  private final int height;
  private final float[] pixels;
  private final Truth truth;

  /**
   * What is true of a gel.
   *
   * @param isAcross whether the lanes lie across the picture
   */
  public record Truth(
      List<LaneTruth> lanes, List<PairTruth> pairs, boolean isLightOnDark, boolean isAcross) {
    public Truth {
      lanes = List.copyOf(lanes);
      pairs = List.copyOf(pairs);
    }
  }

  SyntheticGel(int width, int height, float[] pixels, Truth truth) {
    this.width = width;
    this.height = height;
    this.pixels = pixels;
    this.truth = truth;
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  public float[] pixels() {
    return pixels;
  }

  public List<LaneTruth> lanes() {
    return truth.lanes();
  }

  public List<PairTruth> pairs() {
    return truth.pairs();
  }

  public boolean lightOnDark() {
    return truth.isLightOnDark();
  }

  public boolean across() {
    return truth.isAcross();
  }

  /** The gel as a decoded picture. */
  public Picture toPicture() {
    char[] samples = new char[pixels.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (char) Math.round(pixels[i] * Picture.WHITE);
    }
    return Picture.of(width, height, samples);
  }

  /** The lanes with their places, as a person would give them. */
  public LanePlan toPlan() {
    return new LanePlan(
        lanes().stream()
            .map(
                l ->
                    new NamedLane(
                        LaneKind.parse(l.kind()).orElseThrow(),
                        l.pair() < 0 ? OptionalInt.empty() : OptionalInt.of(l.pair()),
                        Optional.of(new NamedLane.Place(l.xCentre(), l.width()))))
            .toList());
  }

  /** The lanes' names from left to right. */
  public LanePlan toNames() {
    return LanePlan.parse(lanes().stream().map(LaneTruth::kind).toList());
  }
}
