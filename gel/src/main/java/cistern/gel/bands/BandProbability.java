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
    double shade) {

  static BandProbability of(Facts facts) {
    return new BandProbability(
        facts.number("gel.band-probability.constant"),
        facts.number("gel.band-probability.signal"),
        facts.number("gel.band-probability.crossing"),
        facts.number("gel.band-probability.unevenness"),
        facts.number("gel.band-probability.width"),
        facts.number("gel.band-probability.relief"),
        facts.number("gel.band-probability.texture"),
        facts.number("gel.band-probability.shade"));
  }

  double of(Band band, double sigma) {
    double odds =
        constant
            + signal * Math.log(band.signalToNoise())
            + crossing * Math.clamp(band.crossing(), -0.5, 1)
            + unevenness * Math.min(band.unevenness(), 1.5)
            + width * Math.abs(Math.log(band.sigma() / sigma))
            + relief * Math.log(band.relief())
            + texture * Math.log(band.texture())
            + shade * band.shade();
    return 1 / (1 + Math.exp(-odds));
  }
}
