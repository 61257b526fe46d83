package cistern.gel.lanes;

import cistern.fact.Facts;

/** The limits of lane finding, from the facts; lengths are shares of the picture's width. */
record LaneLimits(
    int strips,
    double groundReach,
    double steepest,
    double fanning,
    double narrowest,
    double widest,
    double flank,
    double least,
    Regularity regularity) {

  static LaneLimits of(Facts facts) {
    return new LaneLimits(
        (int) facts.number("gel.lanes.strips"),
        facts.number("gel.lanes.ground-reach"),
        facts.number("gel.lanes.steepest"),
        facts.number("gel.lanes.fanning"),
        facts.number("gel.lanes.narrowest"),
        facts.number("gel.lanes.widest"),
        facts.number("gel.lanes.flank"),
        facts.number("gel.lanes.least-contrast"),
        new Regularity(
            facts.number("gel.lanes.least-share"),
            facts.number("gel.lanes.least-share-at-end"),
            facts.number("gel.lanes.edge-reach"),
            facts.number("gel.lanes.out-of-step")));
  }
}
