package cistern.gel.bands;

import cistern.fact.Facts;

/** The chance that a band is real, a logistic function of what is measured of it. */
record BandProbability(
    double constant,
    double signal,
    double crossing,
    double unevenness,
    double width,
    double relief,
    double texture,
    double shade,
    double end,
    Excess excess,
    Grain grain) {

  /**
   * A width that noise does not explain: the common width holds for all bands of a gel.
   *
   * @param weight log odds of a departure of the width by a factor e
   * @param free departure that means nothing, as a logarithm
   * @param noise the same for a signal of the noise's size; it falls with the signal
   */
  record Excess(double weight, double free, double noise) {
    double of(double departure, double signalToNoise) {
      return weight * Math.max(0, departure - free - noise / signalToNoise);
    }
  }

  /**
   * A height that the lane's own grain reaches somewhere.
   *
   * @param weight log odds of a height under it by a factor e
   * @param least height over the lane's texture that grain hardly reaches
   */
  record Grain(double weight, double least) {
    double of(double texture) {
      return weight * Math.max(0, Math.log(least / texture));
    }
  }

  /** Beyond it more signal says nothing more. */
  private static final double MOST_SIGNAL = 200;

  static BandProbability of(Facts facts) {
    return new BandProbability(
        facts.number("gel.band-probability.constant"),
        facts.number("gel.band-probability.signal"),
        facts.number("gel.band-probability.crossing"),
        facts.number("gel.band-probability.unevenness"),
        facts.number("gel.band-probability.width"),
        facts.number("gel.band-probability.relief"),
        facts.number("gel.band-probability.texture"),
        facts.number("gel.band-probability.shade"),
        facts.number("gel.band-probability.end"),
        new Excess(
            facts.number("gel.band-probability.excess"),
            facts.number("gel.band-probability.excess-free"),
            facts.number("gel.band-probability.excess-noise")),
        new Grain(
            facts.number("gel.band-probability.grain"),
            facts.number("gel.band-probability.grain-least")));
  }

  /**
   * @param sigma of the gel's bands, pixels
   * @param isAtEnd whether it lies at an end of the lane, where labels are and bands are not
   */
  double of(Band band, double sigma, boolean isAtEnd) {
    double departure = Math.abs(Math.log(band.sigma() / sigma));
    double odds =
        constant
            + signal * Math.log(Math.min(band.signalToNoise(), MOST_SIGNAL))
            + crossing * Math.clamp(band.crossing(), -0.5, 1)
            + unevenness * Math.min(band.unevenness(), 1.5)
            + width * departure
            + excess.of(departure, band.signalToNoise())
            + relief * Math.log(band.relief())
            + texture * Math.log(band.texture())
            + grain.of(band.texture())
            + shade * band.shade()
            + (isAtEnd ? end : 0);
    return 1 / (1 + Math.exp(-odds));
  }
}
