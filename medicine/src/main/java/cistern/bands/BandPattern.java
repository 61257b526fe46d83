package cistern.bands;

import java.util.Optional;

/** The five patterns of CSF beside serum (Andersson 1994, JNNP 57:897). */
public enum BandPattern {
  NORMAL(1, false),
  LOCAL(2, true),
  LOCAL_AND_SYSTEMIC(3, true),
  SYSTEMIC(4, false),
  LADDER(5, false);

  private final int number;
  private final boolean isLocal;

  BandPattern(int number, boolean isLocal) {
    this.number = number;
    this.isLocal = isLocal;
  }

  /** 1 to 5. */
  public int number() {
    return number;
  }

  /** Whether the pattern alone stands for local synthesis. */
  public boolean isLocal() {
    return isLocal;
  }

  /** The pattern of a number, if it is one. */
  public static Optional<BandPattern> parse(int number) {
    return number >= 1 && number <= values().length
        ? Optional.of(values()[number - 1])
        : Optional.empty();
  }
}
