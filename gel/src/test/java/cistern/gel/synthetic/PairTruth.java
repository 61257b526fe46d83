package cistern.gel.synthetic;

/** What is true of one pair of lanes; the lanes are indices into the gel's list. */
public record PairTruth(
    Case kind, int csfLane, int serumLane, int csfOnly, int shared, int serumOnly) {

  /** What the pair shows. */
  public enum Case {
    NONE,
    ONE,
    LOCAL,
    MIXED,
    SYSTEMIC,
    LADDER,
    NEAR_MISS,
    SERUM_ONLY,
    MISPAIRED,
    UNREADABLE
  }

  /** A pair that a reader should refuse. */
  public boolean isBad() {
    return kind == Case.MISPAIRED || kind == Case.UNREADABLE;
  }

  /** The pattern of the five that the counts stand for at a cut-off of two. */
  public int pattern() {
    if (kind == Case.LADDER) {
      return 5;
    }
    if (csfOnly >= 2) {
      return shared > 0 ? 3 : 2;
    }
    return shared > 0 ? 4 : 1;
  }
}
